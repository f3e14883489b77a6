import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wireGauge } from '../../../src/units/tables/wire.ts';
import { fromCanonical, toCanonical } from '../../../src/units/unit.ts';
import { unit } from '../ask.ts';

const awg = unit('area', 'AWG');

describe('wire gauge', () => {
	it('comes back from its area, between gauges too', () => {
		fc.assert(
			fc.property(fc.double({ min: -3, max: 40, noNaN: true }), gauge => {
				expect(fromCanonical(toCanonical(gauge, awg), awg)).toBeCloseTo(gauge, 9);
			}),
			{ seed: 5, numRuns: 100 },
		);
	});

	it('is 5 mil at 36 and 0.46 in at 4/0, by definition', () => {
		const diameter = (gauge: number) => Math.sqrt(toCanonical(gauge, awg) / (Math.PI / 4)) / 0.0254;
		expect(diameter(36)).toBeCloseTo(0.005, 12);
		expect(diameter(-3)).toBeCloseTo(0.46, 12);
	});

	it('has six gauges to a doubling of the diameter, near enough', () => {
		expect(toCanonical(10, awg) / toCanonical(16, awg)).toBeCloseTo(4.02, 2);
	});

	it('is seen only where something says gauge', () => {
		expect([wireGauge('10', false), wireGauge('10', true), wireGauge('00', true)]).toEqual([undefined, 10, -1]);
		expect([wireGauge('#8', false), wireGauge('3/0', false), wireGauge('no 12', false)]).toEqual([8, -2, 12]);
		expect([wireGauge('5/0', true), wireGauge('100', true), wireGauge('10 mm2', true)]).toEqual([
			undefined,
			undefined,
			undefined,
		]);
	});
});
