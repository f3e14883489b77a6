import { standardPressure } from './constants.ts';
import { positive, within } from './range.ts';
import { type Cylinder, cylinderVolume } from './slider-crank.ts';

/**
 * Density of the gas between the electrodes at the spark, 1: over dry air at 293 K and 101325 Pa.
 *
 * Manifold density times how far the piston has squeezed it since the intake closed. No volumetric efficiency, residual or
 * exponent: the coil's usual figure is fitted with exactly this. Manifold in Pa absolute and K; intake closing in deg after
 * bottom dead center, 0 to 120; spark in deg before top dead center, -30 to 60. Ideal gas, slider-crank with rod.
 */
export function gasDensityAtSpark(
	cylinder: Cylinder,
	manifold: { readonly pressure: number; readonly temperature: number },
	intakeCloses: number,
	advance: number,
): number {
	positive('manifold pressure', manifold.pressure);
	positive('charge temperature', manifold.temperature);
	within('intake closing', intakeCloses, 0, 120);
	within('spark advance', advance, -30, 60);
	const squeezed = cylinderVolume(cylinder, 180 - intakeCloses) / cylinderVolume(cylinder, advance);
	return (manifold.pressure / standardPressure) * (293 / manifold.temperature) * squeezed;
}

/**
 * Voltage that breaks the gap down in a uniform field, V: 1000 (24.22 x + 6.08 sqrt x), x = density x gap in cm.
 *
 * Density over air at 293 K and 101325 Pa, above 0; gap in m, above 0. Not a catalog's kilovolts: judge by `sparkMargin`.
 * Source: Naidu & Kamaraju, High Voltage Engineering (from memory; 1 to 6 % under published sphere-gap tables).
 */
export function requiredVoltage(density: number, gap: number): number {
	positive('gas density', density);
	positive('spark gap', gap);
	const x = density * gap * 100;
	return 1000 * (24.22 * x + 6.08 * Math.sqrt(x));
}

/** What a coil can do, V, in this formula's kilovolts; never compare it with a catalog's. */
export interface SparkCapacity {
	readonly usual: number;
	readonly low: number;
	readonly high: number;
	/** It fired where it should have broken up: the two answers cannot both be right. */
	readonly disagree: boolean;
}

/** A coil that nobody has tried: fits three facts of common practice. A test holds them. */
export const untriedCoil = { usual: 27500, low: 25600, high: 29700 } as const;

/** The same behind a rotor and a cap, which may take up to a fifth of it. Estimate. */
export const untriedDistributor = { usual: 27500, low: 22000, high: 29700 } as const;

/**
 * A coil's capacity, V, from what it has shown: the voltage that it is proven to give and the one at which it broke up.
 *
 * `null` for what is not known. A proven voltage only raises the usual figures, a blown one only lowers them, both bracket
 * it. When the proven one is above the blown one the band spans both and the lower counts. `untried` is what such a coil
 * would do if nobody had tried it. Each above 0. Common practice.
 */
export function sparkCapacity(
	proven: number | null,
	blown: number | null,
	untried: number = untriedCoil.usual,
): SparkCapacity {
	if (proven !== null) positive('proven voltage', proven);
	if (blown !== null) positive('blown voltage', blown);
	const shown = (volts: number) => Math.min(Math.max(volts, proven ?? 0), blown ?? Number.POSITIVE_INFINITY);
	const usual = shown(untried);
	if (proven === null || blown === null) {
		return { usual, low: shown(untriedCoil.low), high: shown(untriedCoil.high), disagree: false };
	}
	return { usual, low: Math.min(proven, blown), high: Math.max(proven, blown), disagree: proven > blown };
}

/** What is left of the coil, 1: capacity / required - 1, both in V and above 0. Under 0 it misfires. The figure to judge. */
export function sparkMargin(capacity: number, required: number): number {
	positive('spark capacity', capacity);
	positive('required voltage', required);
	return capacity / required - 1;
}
