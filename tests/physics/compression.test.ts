import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	compressionSpread,
	crankingExponent,
	crankingPressure,
	highestReading,
	lowestCylinder,
	wetRecovery,
} from '../../src/physics/compression.ts';

const psi = 6894.757293168;

describe('cranking pressure', () => {
	it('is nothing without compression, and rises with ratio, air and exponent', () => {
		expect(crankingPressure(101325, 1)).toBe(0);
		expect(crankingPressure(101325, 8)).toBeGreaterThan(crankingPressure(101325, 7));
		expect(crankingPressure(101325, 8)).toBeGreaterThan(crankingPressure(83000, 8));
		const [low, usual, high] = [crankingExponent.low, undefined, crankingExponent.high].map(n =>
			crankingPressure(1e5, 8, n),
		);
		expect(low).toBeLessThan(usual!);
		expect(usual).toBeLessThan(high!);
	});

	it('refuses no air, a ratio under 1 and an exponent over 1.4', () => {
		expect(() => crankingPressure(0, 8)).toThrow('ambient pressure');
		expect(() => crankingPressure(1e5, 0.9)).toThrow('effective compression ratio');
		expect(() => crankingPressure(1e5, 8, 1.5)).toThrow('exponent');
	});
});

describe('compression spread', () => {
	it('is the lowest over the highest, whatever the order and the unit, and passes over what was not measured', () => {
		const anyReadings = fc.array(fc.double({ min: 1, max: 300, noNaN: true }), { minLength: 1, maxLength: 12 });
		fc.assert(
			fc.property(anyReadings, readings => {
				const spread = compressionSpread(readings);
				expect(spread).toBeGreaterThan(0);
				expect(spread).toBeLessThanOrEqual(1);
				expect(compressionSpread([null, ...readings.toReversed()])).toBe(spread);
				expect(compressionSpread(readings.map(reading => reading * psi))).toBeCloseTo(spread, 12);
			}),
			{ seed: 9, numRuns: 100 },
		);
		expect(compressionSpread([150, null, 120])).toBe(0.8);
	});

	it('is 0 with a dead cylinder', () => {
		expect(compressionSpread([150, 0])).toBe(0);
	});

	it('refuses lists without a reading above 0, and readings under 0', () => {
		expect(() => compressionSpread([])).toThrow('highest compression reading');
		expect(() => compressionSpread([null, null])).toThrow('highest compression reading');
		expect(() => highestReading([0, 0])).toThrow('above 0');
		expect(() => compressionSpread([150, -1])).toThrow('lowest compression reading');
	});
});

describe('the lowest cylinder', () => {
	it('is found among cylinders that were not measured, the first of two alike', () => {
		expect(lowestCylinder([150, null, 90, 120, 90])).toBe(2);
		expect(lowestCylinder([null, 0])).toBe(1);
	});

	it('is refused where nothing was measured', () => {
		expect(() => lowestCylinder([null, null])).toThrow('number of compression readings is 0; accepted: 1 or more');
	});
});

describe('wet recovery', () => {
	it('is the share of what a cylinder lacked: rings give it back, a valve does not', () => {
		expect(wetRecovery([150, 90, 90, 150], [158, 141, 93, null])).toEqual([null, 0.85, 0.05, null]);
	});

	it('shows a dead cylinder that stays dead', () => {
		expect(wetRecovery([150, 0], [150, 0])).toEqual([null, 0]);
	});

	it('is not known where either reading is missing', () => {
		expect(wetRecovery([150, null, 90], [null, 140, null])).toEqual([null, null, null]);
	});

	it('refuses lists that do not go together', () => {
		expect(() => wetRecovery([150, 90], [150])).toThrow('number of wet readings is 1; accepted: 2, as many as dry');
	});
});
