import { expect, it } from 'vitest';
import { fuelPower } from '../../src/physics/willans.ts';

it('is a straight line over power, and at none what the engine takes itself', () => {
	const idle = fuelPower(0, 750, 5e-3);
	expect(idle).toBeCloseTo((1.6e5 * 5e-3 * 750) / 120 / 0.38, 6);
	expect(fuelPower(20e3, 750, 5e-3) - idle).toBeCloseTo(20e3 / 0.38, 6);
	expect(fuelPower(0, 1500, 5e-3) / idle).toBeCloseTo(2, 12);
});

it.each([
	['power', () => fuelPower(-1, 750, 5e-3)],
	['speed', () => fuelPower(0, 0, 5e-3)],
	['displacement', () => fuelPower(0, 750, 0)],
])('refuses no %s', (what, call) => {
	expect(call).toThrow(what);
});
