import { OutOfRange, positive, within } from './range.ts';

/** The two screw-thread families: their tensile stress areas are taken at slightly different diameters. */
export type Thread = 'unified' | 'metric';

/**
 * Area that carries a screw's pull, m2: pi/4 (d - c P)^2, c 0.9743 unified, 0.9382 metric.
 *
 * Diameter and pitch in m, pitch under the diameter. Source: ASME B1.1 (as in Machinery's Handbook), ISO 898-1.
 */
export function stressArea(thread: Thread, diameter: number, pitch: number): number {
	positive('diameter', diameter);
	positive('pitch', pitch);
	if (!(pitch < diameter)) throw new OutOfRange('pitch', pitch, 'under the diameter');
	const carrying = diameter - (thread === 'unified' ? 0.9743 : 0.9382) * pitch;
	return (Math.PI / 4) * carrying * carrying;
}

const inch = 0.0254;

/** Threads that hold heads down: diameter, coarse and fine pitch, m. Standard pitches of ASME B1.1 and ISO 262. */
const headThreads = [
	{ thread: 'unified', diameter: (3 / 8) * inch, coarse: inch / 16, fine: inch / 24 },
	{ thread: 'unified', diameter: (7 / 16) * inch, coarse: inch / 14, fine: inch / 20 },
	{ thread: 'unified', diameter: (1 / 2) * inch, coarse: inch / 13, fine: inch / 20 },
	{ thread: 'metric', diameter: 0.01, coarse: 0.0015, fine: 0.00125 },
	{ thread: 'metric', diameter: 0.011, coarse: 0.002, fine: 0.0015 },
	{ thread: 'metric', diameter: 0.012, coarse: 0.00175, fine: 0.00125 },
] as const;

/** A diameter this near to a usual thread is that thread, measured over worn or painted crests. */
const sameThread = 0.01;

/**
 * Stress areas, m2, of a head fastener known by its diameter alone, m: with the coarse pitch (the smaller) and the fine.
 *
 * Within 1 % of 3/8, 7/16 or 1/2 in, or M10 to M12, it is that thread. Another size is taken to be cut in the proportions
 * of the nearest of them: an estimate. Errors: OutOfRange.
 */
export function headFastenerArea(diameter: number): { readonly coarse: number; readonly fine: number } {
	positive('fastener diameter', diameter);
	const off = (known: { readonly diameter: number }) => Math.abs(diameter - known.diameter);
	const nearest = headThreads.reduce((best, known) => (off(known) < off(best) ? known : best));
	const size = diameter / nearest.diameter;
	const scale = Math.abs(size - 1) <= sameThread ? 1 : size * size;
	const area = (pitch: number) => scale * stressArea(nearest.thread, nearest.diameter, pitch);
	return { coarse: area(nearest.coarse), fine: area(nearest.fine) };
}

/**
 * How much of the torque goes into friction: the nut factor K.
 *
 * Source: Shigley, table of torque factors, from memory: lubricated 0.18, zinc plated 0.20 (also where nothing is known of the
 * thread), black and dry 0.30; 30 % of spread. Moly 0.13 is common practice. Other handbooks give bare dry steel 0.20 and dry
 * zinc 0.30, the other way round: a dry thread is hardly known.
 */
export const nutFactor = { oiled: 0.18, zinc: 0.2, dry: 0.3, moly: 0.13 } as const;

/**
 * Pull in a fastener from its torque, N: T / (K d).
 *
 * Torque in N m, 0 or more; diameter in m; K 0.08 to 0.4. Within 30 %. Source: Shigley, Mechanical Engineering Design, eq. 8-27.
 */
export function preloadFromTorque(torque: number, diameter: number, factor: number): number {
	within('torque', torque, 0, 2000);
	positive('fastener diameter', diameter);
	within('nut factor', factor, 0.08, 0.4);
	return torque / (factor * diameter);
}

/** Stress in a stretch fastener turned past its yield, Pa: new, the proof stress of property class 10.9 (ISO 898-1). */
const stretchStress = 830e6;

/** What a stretch fastener keeps when it is used a second time, share of the first. Estimate. */
const reusedShare = 0.75;

/** Pull in a stretch fastener, N, from its stress area in m2. Estimate. */
export function preloadOfStretch(area: number, reused: boolean): number {
	positive('stress area', area);
	return stretchStress * area * (reused ? reusedShare : 1);
}

/** One bank's head: pull in each fastener N, fasteners, cylinders under it, gasket bore m, peak pressure Pa. All above 0. */
export interface HeadClamp {
	readonly preload: number;
	readonly fasteners: number;
	readonly cylinders: number;
	readonly gasketBore: number;
	readonly peakPressure: number;
}

/**
 * How many times over a head is held down, 1: the pull of all its fasteners over what peak pressure lifts with on every bore.
 *
 * Fasteners between two bores count once, as they are shared. Statics, estimate.
 */
export function headClampRatio({ preload, fasteners, cylinders, gasketBore, peakPressure }: HeadClamp): number {
	for (const [what, value] of Object.entries({ preload, fasteners, cylinders, gasketBore, peakPressure })) {
		positive(what, value);
	}
	return (preload * (fasteners / cylinders)) / (peakPressure * (Math.PI / 4) * gasketBore * gasketBore);
}
