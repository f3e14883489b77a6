import { expect, it } from 'vitest';
import { burnOverSpeed } from '../../src/physics/burn-over-speed.ts';

it.each([
	[2000, 1, 1, 1],
	[4000, 1.05, 1.165, 0.8125],
	[1000, 0.6, 0.67, 1.375],
	[5000, 1.048, 1.198, 0.775],
])('at %d rpm: delay, duration and exponent over those at 2000 rpm', (speed, delay, duration, exponent) => {
	const by = burnOverSpeed(speed);
	expect(by.delay).toBeCloseTo(delay, 12);
	expect(by.duration).toBeCloseTo(duration, 12);
	expect(by.exponent).toBeCloseTo(exponent, 12);
});

it('holds what it is at 1000 rpm below that, and refuses no speed', () => {
	expect(burnOverSpeed(999)).toEqual(burnOverSpeed(1000));
	expect(burnOverSpeed(200)).toEqual(burnOverSpeed(1000));
	expect(() => burnOverSpeed(0)).toThrow('speed');
});
