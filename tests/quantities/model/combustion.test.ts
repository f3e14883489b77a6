import { describe, expect, test } from 'vitest';
import { fullLoadCycle } from '../../../src/physics/full-load.ts';
import type { FullLoad } from '../../../src/physics/full-load-engine.ts';
import { knockBand, knockIntegral } from '../../../src/physics/knock.ts';

describe('the bands are what a flame 15 % slower or faster makes of it, 4 deg of burn angle and 3 of development', () => {
	const engine = (boost: number, advance: number, burn: number): FullLoad => ({
		cylinder: { bore: 0.1016, stroke: 0.0884, rod: 0.15, ratio: 9 },
		speed: 5000,
		intakeCloses: 60,
		manifoldPressure: 99500 + boost,
		chargeTemperature: boost === 0 ? 318 : 328,
		volumetricEfficiency: 0.85,
		lambda: 0.85,
		fuel: { stoichiometricRatio: 14.7, heatingValue: 43.44e6, ethanol: 0 },
		advance,
		burn,
	});

	test.each([
		[0, 28],
		[55e3, 20],
		[103e3, 16],
	])('at %d Pa of boost and %d deg of advance', (boost, advance) => {
		const usual = fullLoadCycle(engine(boost, advance, 1));
		for (const slower of [23 / 27, 31 / 27]) {
			const other = fullLoadCycle(engine(boost, advance, slower));
			expect(other.peakPressure / usual.peakPressure).toBeGreaterThan(0.84);
			expect(other.peakPressure / usual.peakPressure).toBeLessThan(1.17);
			expect(Math.abs(other.peakAngle - usual.peakAngle)).toBeLessThan(4);
			const knock = knockIntegral(other, 5000, 92) / knockIntegral(usual, 5000, 92);
			expect(knock).toBeGreaterThan(knockBand.low);
			expect(knock).toBeLessThan(knockBand.high);
		}
	});
});
