import { ampacity, soldGauges } from './ampacity.ts';
import { positive, within } from './range.ts';
import { gaugeArea, wireDrop } from './wire.ts';

/**
 * The largest fuse that still guards a wire, A, from what the wire may carry in the open, A. Errors: OutOfRange.
 *
 * 0.85 is the factor of 33 CFR 183.425, Table 5, note 1, for 105 degC insulation in an engine space (50 degC).
 */
export function largestFuse(ampacity: number): number {
	positive('ampacity', ampacity);
	return 0.85 * ampacity;
}

/**
 * The smallest fuse that carries a load for good, A: load over 0.8. For an alternator the same, 1.25 x its output.
 *
 * Errors: OutOfRange. Source: common practice: a fuse is loaded to 80 % of its rating.
 */
export function smallestFuse(load: number): number {
	positive('load', load);
	return 1.25 * load;
}

/** Ratings that blade and bolted fuses are sold in, A. ISO 8820, from memory. */
const soldFuses = [
	1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200, 225, 250, 300,
];

/** The largest fuse that is sold of those up to a figure in A; 0 where the smallest is more. */
export const soldFuseUpTo = (most: number): number => soldFuses.findLast(rating => rating <= most) ?? 0;

/**
 * The thinnest wire that is sold for a load in A, over a length one way in m, losing no more than a drop in V out and
 * back, and the fuse for it. Undefined: none up to 0000 is thick enough. Errors: OutOfRange.
 *
 * Source: `wireDrop` at 20 degC, `ampacity`, and the fuse rules here: 105 degC insulation in an engine space.
 */
export function wireFor(load: number, oneWay: number, drop: number): { gauge: number; fuse: number } | undefined {
	within('wire length', oneWay, 0, 1000);
	positive('allowed drop', drop);
	const fuse = soldFuses.find(rating => rating >= smallestFuse(load));
	if (fuse === undefined) return undefined;
	const gauge = soldGauges.find(size => {
		const area = gaugeArea(size); // every sold gauge is in the table
		return wireDrop(load, area, oneWay) <= drop && fuse <= largestFuse(ampacity(area)!);
	});
	return gauge === undefined ? undefined : { gauge, fuse };
}
