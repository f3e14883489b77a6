import { expect, it } from 'vitest';
import { burnInto, burntAt, tail, usualPower } from '../../src/physics/wiebe.ts';

function burnAt(y: number, power = usualPower) {
	const into = new Float64Array(3);
	burnInto(y, power, into, 1);
	expect(into[0]).toBe(0);
	return { unburnt: into[1]!, rate: into[2]! };
}
const unburntAt = (y: number, power = usualPower) => burnAt(y, power).unburnt;
const rate = (y: number, power = usualPower) => burnAt(y, power).rate;
const burnt = (y: number) => 1 - Math.exp(-5 * y ** 3);

it('nothing burns before the start and after the tail, where all but 5e-8 is burnt', () => {
	expect(rate(-0.1)).toBe(0);
	expect(rate(0)).toBe(0);
	expect(rate(tail)).toBe(0);
	expect([unburntAt(-0.1), unburntAt(0)]).toEqual([1, 1]);
	expect(unburntAt(tail)).toBeLessThan(5e-8);
	expect(unburntAt(tail)).toBeGreaterThan(4e-8);
	expect(unburntAt(2)).toBe(unburntAt(tail));
});

it('the rate is the slope of the curve', () => {
	for (const y of [0.05, 0.3, 0.55, 0.9, 1.2, 1.4]) {
		expect(unburntAt(y)).toBeCloseTo(1 - burnt(y), 12);
		expect(rate(y)).toBeCloseTo((burnt(y + 1e-6) - burnt(y - 1e-6)) / 2e-6, 6);
	}
});

it('the place of a share gives that share back, and 10 to 90 % is 0.496 of the whole', () => {
	for (const x of [0, 0.01, 0.1, 0.5, 0.9, 0.999]) expect(burnt(burntAt(x))).toBeCloseTo(x, 12);
	expect(burntAt(0.9) - burntAt(0.1)).toBeCloseTo(0.496, 3);
});

it('another power: the same curve with it, and its half later in the duration', () => {
	const lazy = (y: number) => 1 - Math.exp(-5 * y ** 3.6);
	for (const y of [0.05, 0.3, 0.55, 0.9, 1.2, 1.4]) {
		expect(unburntAt(y, 3.6)).toBeCloseTo(1 - lazy(y), 12);
		expect(rate(y, 3.6)).toBeCloseTo((lazy(y + 1e-6) - lazy(y - 1e-6)) / 2e-6, 6);
	}
	for (const x of [0, 0.1, 0.5, 0.9]) expect(lazy(burntAt(x, 3.6))).toBeCloseTo(x, 12);
	expect(burntAt(0.5, 3.6)).toBeGreaterThan(burntAt(0.5));
	expect(unburntAt(tail, 2.7)).toBeLessThan(4e-7);
});
