import { describe, expect, it } from 'vitest';
import { massFromVolume, volumeFromMass } from '../../src/units/density.ts';
import { fromCanonical, toCanonical } from '../../src/units/unit.ts';
import { unit } from './ask.ts';

describe('volume flow and mass flow', () => {
	it('meet at 10.5 cc/min a lb/h where fuel is taken as 0.72 kg/L (common practice)', () => {
		const flow = volumeFromMass(720)(toCanonical(1, unit('mass-flow', 'lb/h')));
		expect(fromCanonical(flow, unit('volume-flow', 'cc/min'))).toBeCloseTo(10.5, 2);
	});

	it('turn into each other and back', () => {
		expect(volumeFromMass(745)(massFromVolume(745)(3e-5))).toBeCloseTo(3e-5, 15);
		expect(massFromVolume(745)(1e-3)).toBeCloseTo(0.745, 12);
	});

	it('need a density above zero', () => {
		for (const density of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
			expect(() => massFromVolume(density)).toThrow(`density is ${density} kg/m3; accepted: above 0`);
			expect(() => massFromVolume(density)).toThrow(RangeError);
			expect(() => volumeFromMass(density)).toThrow(RangeError);
		}
	});
});
