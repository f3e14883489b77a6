import { expect, test } from 'vitest';
import { quantile } from '../../src/audit/quantile.ts';
import { seed } from '../counts.ts';
import { chance } from '../support/chance.ts';

const random = chance(seed);
const normals = (count: number) =>
	Float64Array.from({ length: count }, () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random()));

test('is the number itself where all are equal, and lies within the list, the low end under the high one', () => {
	for (const count of [1, 2, 3, 20, 400]) {
		expect(quantile(new Float64Array(count).fill(0.1), 0.05)).toBe(0.1);
		const list = normals(count).sort();
		const [low, high] = [quantile(list, 0.05), quantile(list, 0.95)];
		expect(low).toBeGreaterThanOrEqual(list[0]!);
		expect(high).toBeLessThanOrEqual(list.at(-1)!);
		expect(low).toBeLessThanOrEqual(high);
	}
});

// The twentieth of a standard normal, -1.6449: any handbook of statistics.
test('of normal deviates is the twentieth and the last twentieth, and strays less than the one at that place', () => {
	let [off, mean, plainly] = [0, 0, 0];
	const times = 300;
	for (let time = 0; time < times; time++) {
		const list = normals(400).sort();
		const low = quantile(list, 0.05);
		off += (low + 1.6449) ** 2 / times;
		mean += (low + 1.6449) / times;
		plainly += (list[Math.round(0.05 * 400 - 0.5)]! + 1.6449) ** 2 / times;
		const mirrored = quantile(list.map(value => -value).sort(), 0.95);
		expect(mirrored).toBeCloseTo(-low, 12);
	}
	expect(Math.abs(mean)).toBeLessThan(0.02);
	expect(off).toBeLessThan(0.95 * plainly);
});
