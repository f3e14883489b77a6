import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { makeCurve } from '../../src/physics/interpolate.ts';
import { pumpFromCurve, pumpFromPoint } from '../../src/physics/pump.ts';
import { between, expectRange, expectRefusals, seeded } from './spoilt.ts';

const psi = 6894.757293168361;
const curve = makeCurve([
	[30 * psi, 0.063],
	[40 * psi, 0.059],
	[60 * psi, 0.048],
	[80 * psi, 0.03],
]);
const point = { flow: 0.055, pressure: 43.5 * psi };

describe('a pump with a curve', () => {
	test('follows it at the voltage of the curve', () => {
		const pump = pumpFromCurve(curve, 1);
		expect(pump(40 * psi)).toBeCloseTo(0.059, 12);
		expect(pump(60 * psi)).toBeCloseTo(0.048, 12);
	});

	test('is slower at a lower voltage, and its curve ends at a lower pressure', () => {
		const slow = pumpFromCurve(curve, 0.9);
		expect(slow(40 * psi * 0.81)).toBeCloseTo(0.9 * 0.059, 12);
		expect(slow(80 * psi * 0.81)).toBeCloseTo(0.9 * 0.03, 12);
		expect(slow(80 * psi * 0.811)).toBeUndefined();
	});

	test('proves nothing beyond its last point, and no more than its first flow below the first', () => {
		expect(pumpFromCurve(curve, 1)(81 * psi)).toBeUndefined();
		expect(pumpFromCurve(curve, 1)(0)).toBe(0.063);
	});

	test('gives nothing, rather than less than nothing, where the curve goes under 0', () => {
		const bad = makeCurve([
			[0, 1],
			[10, -1],
		]);
		expect(pumpFromCurve(bad, 1)(10)).toBe(0);
	});
});

describe('a pump of one point', () => {
	test('holds its flow up to its pressure and then falls 0.8 % of it a psi', () => {
		const pump = pumpFromPoint(point, 1);
		expect(pump(0)).toBe(0.055);
		expect(pump(43.5 * psi)).toBe(0.055);
		expect(pump(53.5 * psi)! / 0.055).toBeCloseTo(0.92, 12);
		expect(pump(500 * psi)).toBe(0);
	});

	test('goes with the square of the voltage, or with the power that is asked', () => {
		expect(pumpFromPoint(point, 0.9)(0)! / 0.055).toBeCloseTo(0.81, 12);
		expect(pumpFromPoint({ ...point, exponent: 1.5 }, 0.9)(0)! / 0.055).toBeCloseTo(0.9 ** 1.5, 12);
		expect(pumpFromPoint({ ...point, fall: 0.012 / psi }, 1)(53.5 * psi)! / 0.055).toBeCloseTo(0.88, 12);
	});
});

test('no pump gives more against more pressure, nor less for more volts', () => {
	const volts = between(0.7, 1.2);
	fc.assert(
		fc.property(volts, between(0, 60 * psi), between(0, 10 * psi), (ratio, pressure, more) => {
			for (const make of [(r: number) => pumpFromCurve(curve, r), (r: number) => pumpFromPoint(point, r)]) {
				const here = make(ratio)(pressure);
				const further = make(ratio)(pressure + more);
				if (further !== undefined) expect(further).toBeLessThanOrEqual(here! + 1e-15);
				const faster = make(ratio * 1.02)(pressure);
				if (here !== undefined) expect(faster).toBeGreaterThanOrEqual(here - 1e-15);
			}
		}),
		seeded,
	);
});

test('what cannot be is refused by name', () => {
	expectRefusals((r, p) => pumpFromCurve(curve, r!)(p!), { 'voltage ratio': 0.95, pressure: 40 * psi });
	expectRefusals(
		(flow, rated, exponent, fall, ratio, pressure) =>
			pumpFromPoint({ flow: flow!, pressure: rated!, exponent: exponent!, fall: fall! }, ratio!)(pressure!),
		{
			'pump flow': 0.055,
			'pump pressure': 3e5,
			'exponent of voltage': 2,
			'fall with pressure': 1e-6,
			'voltage ratio': 0.95,
			pressure: 3e5,
		},
	);
});

test('ranges are taken to their ends and no further', () => {
	expectRange(ratio => pumpFromCurve(curve, ratio), 'voltage ratio', 0.3, 2);
	expectRange(ratio => pumpFromPoint(point, ratio), 'voltage ratio', 0.3, 2);
	expectRange(exponent => pumpFromPoint({ ...point, exponent }, 1), 'exponent of voltage', 1, 3);
	expectRange(fall => pumpFromPoint({ ...point, fall }, 1), 'fall with pressure', 0, 1e-5);
});
