import { OutOfRange, positive, within } from './range.ts';

/** One reading a cylinder, in cylinder order; `null` where none could be taken. */
export type Readings = readonly (number | null)[];

/**
 * Exponents of compression while the starter turns a warm engine: warm walls and leaking rings hold it under 1.4.
 * Common practice; the spread is the model's own doubt.
 */
export const crankingExponent = { usual: 1.25, low: 1.2, high: 1.3 } as const;

/**
 * Pressure that a compression gauge should show, Pa gauge: ambient x ratio^exponent - ambient.
 *
 * Ambient in Pa absolute, above 0; effective ratio 1 to 30; exponent 1 to 1.4. Polytropic relation, estimate.
 */
export function crankingPressure(
	ambient: number,
	effectiveRatio: number,
	exponent: number = crankingExponent.usual,
): number {
	positive('ambient pressure', ambient);
	within('effective compression ratio', effectiveRatio, 1, 30);
	within('exponent', exponent, 1, 1.4);
	return ambient * effectiveRatio ** exponent - ambient;
}

const taken = (readings: Readings): number[] => readings.filter(reading => reading !== null);

/** Highest reading. Refuses lists without one above 0. */
export function highestReading(readings: Readings): number {
	const highest = Math.max(...taken(readings));
	if (!(highest > 0)) throw new OutOfRange('highest compression reading', highest, 'above 0');
	return highest;
}

/** Place of the lowest reading in the list, the first of several alike. Refuses lists without a reading. */
export function lowestCylinder(readings: Readings): number {
	const lowest = Math.min(...taken(readings));
	if (!Number.isFinite(lowest)) throw new OutOfRange('number of compression readings', 0, '1 or more');
	return readings.indexOf(lowest);
}

/** Lowest over highest, 0 to 1, of the cylinders that were measured. Refuses a reading under 0 and lists without one above 0. */
export function compressionSpread(readings: Readings): number {
	const lowest = Math.min(...taken(readings));
	const highest = highestReading(readings);
	within('lowest compression reading', lowest, 0, highest);
	return lowest / highest;
}

/**
 * How much of what a cylinder lacks oil gives back: (wet - dry) / (highest dry - dry), a cylinder each.
 *
 * Near 1: the rings leak. Near 0: a valve or the gasket. `null` where a reading is missing or nothing is lacking.
 * Refuses lists of different length and those without a dry reading above 0. Common practice.
 */
export function wetRecovery(dry: Readings, wet: Readings): (number | null)[] {
	if (wet.length !== dry.length)
		throw new OutOfRange('number of wet readings', wet.length, `${dry.length}, as many as dry`);
	const highest = highestReading(dry);
	return dry.map((before, i) => {
		const after = wet[i] ?? null;
		return before === null || after === null || before >= highest ? null : (after - before) / (highest - before);
	});
}
