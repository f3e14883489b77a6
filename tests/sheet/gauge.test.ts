import { describe, expect, test } from 'vitest';
import { areaOf, gaugeInSheet, readGauge, writeGauge } from '../../src/sheet/gauge.ts';

const mm2 = (said: unknown) => areaOf(readGauge(said)!) * 1e6;

describe("a wire's size", () => {
	// ASTM B258, table of nominal sizes: 18 AWG 0.823 mm2, 10 AWG 5.26 mm2, 2/0 67.4 mm2, 4/0 107 mm2 (from memory).
	test.each([
		[18, 0.823],
		['18', 0.823],
		['18 AWG', 0.823],
		['18 ga.', 0.823],
		['#10', 5.26],
		['2/0', 67.4],
		['00', 67.4],
		[-1, 67.4],
		['0000 AWG', 107.2],
		['0.75 mm2', 0.75],
		['0,75 mm²', 0.75],
		['2.5 sq mm', 2.5],
		['0.1 cm2', 10],
	])('%s is %s mm2 of copper', (said, copper) => {
		expect(Math.abs(mm2(said) / copper - 1)).toBeLessThan(0.003);
	});

	test.each([
		17.5,
		41,
		-4,
		'5/0',
		'',
		'thick',
		'18 ft',
		'0 mm2',
		'-1 mm2',
		'501 mm2',
		'1e3 mm2',
		null,
		true,
		Number.NaN,
	])('%s is none', said => {
		expect(readGauge(said)).toBeNull();
	});

	test.each([
		['00', -1, '2/0 AWG'],
		['18 ga', 18, '18 AWG'],
		['0,75 mm²', '0.75 mm2', '0.75 mm2'],
	])('%s is kept as %s and written as %s', (said, kept, written) => {
		const gauge = readGauge(said)!;
		expect(gaugeInSheet(gauge)).toBe(kept);
		expect(writeGauge(gauge)).toBe(written);
		expect(areaOf(readGauge(kept)!)).toBe(areaOf(gauge));
	});
});
