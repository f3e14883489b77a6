import { expect, test } from 'vitest';
import { latinHypercube } from '../../src/graph/latin-hypercube.ts';
import { nineOfTen, spreadReadings } from '../../src/graph/uncertain.ts';

const draws = 4_000;
const spread = { by: 0.1, relative: true };

/** The mean and the middle nine tenths of the highest and of the lowest of some readings that stray. */
function ends(readings: readonly (number | null)[]) {
	const { dimensions, apply } = spreadReadings(0, spread, readings.length);
	const points = latinHypercube(
		readings.map((_, at) => `reading ${at}`),
		draws,
	);
	const z = new Float64Array(dimensions);
	const drawn = Array.from({ length: draws }, (_, index) => {
		points.point(index, z);
		return (apply(readings as never, z, 0) as (number | null)[]).filter(reading => reading !== null);
	});
	const bandOf = (of: (list: number[]) => number) => {
		const sorted = drawn.map(of).sort((a, b) => a - b);
		return {
			mean: sorted.reduce((sum, value) => sum + value, 0) / draws,
			low: sorted[draws * 0.05]!,
			high: sorted[draws * 0.95]!,
		};
	};
	return { highest: bandOf(list => Math.max(...list)), lowest: bandOf(list => Math.min(...list)) };
}

// What stands in for it: the band of one reading, by its own spread.
test.each([
	['near each other', [152, 150, 149, 151, 148, 150, 153, 150]],
	['one weak', [150, 151, 149, 95, 150, 152, 150, 151]],
	['all alike', [150, 150, 150, 150]],
	['one not taken', [150, null, 140, 160, 155, 149]],
])('the band of the highest and of the lowest reading has that reading in its middle: %s', (_, readings) => {
	const taken = readings.filter(reading => reading !== null);
	const { highest, lowest } = ends(readings);
	for (const [band, value] of [
		[highest, Math.max(...taken)],
		[lowest, Math.min(...taken)],
	] as const) {
		const own = value * spread.by;
		// Freely straying, eight readings 10 % off give a highest 0.85 of that too high in the mean (order statistics: 1.42 sigma).
		expect(Math.abs(band.mean - value)).toBeLessThan(0.2 * own);
		expect(band.low).toBeLessThan(value);
		expect(band.high).toBeGreaterThan(value);
		expect((band.high + band.low) / 2 - value).toBeLessThan(0.2 * own);
		expect((band.high - band.low) / 2).toBeGreaterThan(0.75 * own);
	}
	expect(nineOfTen).toBeCloseTo(1.645, 3);
});
