import { positive } from './range.ts';
import { gaugeArea } from './wire.ts';

/** Wire gauge (0000 is -3) and A, thinnest first. */
type Chart = readonly (readonly [gauge: number, amps: number])[];

/** 33 CFR 183.425, Table 5, column for 105 degC insulation: stranded copper, under 50 V, 30 degC around it. */
const carries: Chart = [
	[18, 20],
	[16, 25],
	[14, 35],
	[12, 45],
	[10, 60],
	[8, 80],
	[6, 120],
	[4, 160],
	[3, 180],
	[2, 210],
	[1, 245],
	[0, 285],
	[-1, 330],
	[-2, 385],
	[-3, 445],
];

/** FAA AC 43.13-1B, Table 11-3, fuse column: cautious, for wire in bundles. Gauges are the chart's own. */
const fuseChart: Chart = [
	[22, 5],
	[20, 5],
	[18, 10],
	[16, 10],
	[14, 15],
	[12, 20],
	[10, 30],
	[8, 50],
	[6, 70],
	[4, 70],
	[2, 100],
	[1, 150],
	[0, 150],
];

/**
 * FAA AC 43.13-1B, Table 11-9, 105 degC column: 33 wires or more in a bundle (9 from 8 gauge on), 70 degC around it, a fifth of
 * them loaded, in thin air. Cautious: what a wire may carry whatever it is tied up with.
 */
const inBundle: Chart = [
	[24, 2.5],
	[22, 3],
	[20, 4],
	[18, 6],
	[16, 7],
	[14, 10],
	[12, 13],
	[10, 17],
	[8, 38],
	[6, 50],
	[4, 68],
	[2, 95],
	[1, 113],
	[0, 128],
	[-1, 147],
	[-2, 172],
	[-3, 204],
];

/** Gauges that wire for vehicles is sold in, thinnest first, as far as `carries` goes: without 3. */
export const soldGauges: readonly number[] = carries.map(([gauge]) => gauge).filter(gauge => gauge !== 3);

/**
 * Reads a chart by area: the thickest size that is not thicker than the wire, so a metric size counts as the next smaller
 * gauge. Undefined: thinner than the chart begins. Sizes within 1e-6 of each other are one.
 */
function reader(chart: Chart): (area: number) => number | undefined {
	const sizes = chart.map(([gauge, amps]) => ({ area: gaugeArea(gauge) * (1 - 1e-6), amps }));
	return area => {
		positive('wire area', area);
		return sizes.findLast(size => size.area <= area)?.amps;
	};
}

/**
 * What a wire of an area in m2 may carry in the open, A, if its insulation is good for 105 degC; undefined under 18 gauge.
 *
 * Next smaller size of the table; thicker than 0000 counts as 0000. Errors: OutOfRange. Source: 33 CFR 183.425, Table 5.
 */
export const ampacity = reader(carries);

/** The fuse that the aircraft chart gives for a wire of an area in m2, A; undefined under 22 gauge. Errors: OutOfRange. FAA AC 43.13-1B. */
export const chartFuse = reader(fuseChart);

/** What a wire of an area in m2 may carry in a full bundle, A; undefined under 24 gauge. Errors: OutOfRange. FAA AC 43.13-1B. */
export const bundleAmpacity = reader(inBundle);
