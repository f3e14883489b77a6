import { describe, expect, test } from 'vitest';
import { ampacity, chartFuse, soldGauges } from '../../src/physics/ampacity.ts';
import { gaugeArea } from '../../src/physics/wire.ts';
import { expectRefusals } from './spoilt.ts';

describe('what a wire may carry', () => {
	test('is that of the next smaller gauge when the size is metric or in between', () => {
		expect(ampacity(2.5e-6)).toBe(35); // 14 gauge is 2.08 mm2, 12 is 3.31
		expect(ampacity(2e-6)).toBe(25);
		expect(ampacity(gaugeArea(13))).toBe(35);
		expect(ampacity(gaugeArea(5))).toBe(120);
	});

	test('does not hang on the last digit of a size', () => {
		expect(ampacity(gaugeArea(12) * (1 - 1e-9))).toBe(45);
		expect(ampacity(gaugeArea(12) * (1 - 1e-6))).toBe(45);
		expect(ampacity(gaugeArea(12) * 0.999)).toBe(35);
	});

	test('cannot be decided under the thinnest of the table, and stays at the top above the thickest', () => {
		expect(ampacity(gaugeArea(20))).toBeUndefined();
		expect(ampacity(200e-6)).toBe(445);
	});

	test('never falls with area', () => {
		let before = 0;
		for (let area = 0.9e-6; area < 120e-6; area *= 1.01) {
			const now = ampacity(area)!;
			expect(now).toBeGreaterThanOrEqual(before);
			before = now;
		}
	});
});

describe('the aircraft fuse chart', () => {
	test('starts at 22 gauge and takes the next smaller size it has', () => {
		expect(chartFuse(gaugeArea(24))).toBeUndefined();
		expect(chartFuse(gaugeArea(3))).toBe(70);
		expect(chartFuse(2.5e-6)).toBe(15);
	});
});

test('the gauges sold run from 18 to 0000, thinnest first, without 3', () => {
	expect(soldGauges).toEqual([18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 0, -1, -2, -3]);
});

test('no area is refused by name', () => {
	expectRefusals(a => ampacity(a!), { 'wire area': 3e-6 });
	expectRefusals(a => chartFuse(a!), { 'wire area': 3e-6 });
});
