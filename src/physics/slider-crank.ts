import { OutOfRange, positive } from './range.ts';

/** One cylinder: bore, stroke and rod length in m (a rod of Infinity gives the textbooks' pure cosine), compression ratio. */
export interface Cylinder {
	readonly bore: number;
	readonly stroke: number;
	readonly rod: number;
	readonly ratio: number;
}

export const radians = Math.PI / 180;

/** Refuses a cylinder that cannot turn: rod not longer than the crank throw, ratio not above 1, no bore. */
export function checkCylinder({ bore, stroke, rod, ratio }: Cylinder): void {
	positive('bore', bore);
	positive('stroke', stroke);
	if (!(rod > stroke / 2)) throw new OutOfRange('rod', rod, 'longer than half of the stroke');
	if (!(ratio > 1 && ratio < Number.POSITIVE_INFINITY)) throw new OutOfRange('compression ratio', ratio, 'above 1');
}

/**
 * How far the piston stands below top dead center, m, at a crank angle in deg from there (any angle, either sign).
 *
 * The rod's share is written as throw^2 sin^2 / (rod + root): it keeps its digits near top dead center and is 0 for an
 * infinite rod. Geometry; as in Heywood, Internal Combustion Engine Fundamentals, section 2.2.
 */
export function pistonDrop(stroke: number, rod: number, angle: number): number {
	const crank = stroke / 2;
	const across = crank * Math.sin(angle * radians);
	return crank * (1 - Math.cos(angle * radians)) + (across * across) / (rod + Math.sqrt(rod * rod - across * across));
}

/** Volume that one piston sweeps, m3, from bore and stroke in m. Both must be above 0. */
export function sweptVolume(bore: number, stroke: number): number {
	positive('bore', bore);
	positive('stroke', stroke);
	return (Math.PI / 4) * bore * bore * stroke;
}

/** Gas volume above the piston, m3, at a crank angle in deg from top dead center. Refuses a cylinder that cannot turn. */
export function cylinderVolume(cylinder: Cylinder, angle: number): number {
	checkCylinder(cylinder);
	const swept = sweptVolume(cylinder.bore, cylinder.stroke);
	return swept / (cylinder.ratio - 1) + (swept / cylinder.stroke) * pistonDrop(cylinder.stroke, cylinder.rod, angle);
}
