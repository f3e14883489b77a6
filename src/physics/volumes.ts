import { OutOfRange, positive, within } from './range.ts';
import { type Cylinder, cylinderVolume, sweptVolume } from './slider-crank.ts';

/** What is measured to find a compression ratio. Lengths in m, volumes in m3. */
export interface Volumes {
	readonly bore: number;
	readonly stroke: number;
	readonly chamber: number;
	/** Dish above 0, dome under 0. */
	readonly piston: number;
	readonly gasketThickness: number;
	readonly gasketBore: number;
	/** Piston under the deck at top dead center; above it, under 0. */
	readonly deck: number;
}

/** Gas volume left at top dead center, m3: chamber, piston, gasket and deck. Refuses one that is not above 0. Geometry. */
export function clearanceVolume(v: Volumes): number {
	positive('bore', v.bore);
	positive('gasket bore', v.gasketBore);
	within('gasket thickness', v.gasketThickness, 0, 0.02);
	const disc = (bore: number, height: number) => (Math.PI / 4) * bore * bore * height;
	const clearance = v.chamber + v.piston + disc(v.gasketBore, v.gasketThickness) + disc(v.bore, v.deck);
	if (!(clearance > 0)) throw new OutOfRange('volume at top dead center', clearance, 'above 0');
	return clearance;
}

/** Compression ratio, 1: (swept + clearance) / clearance. Refuses what `clearanceVolume` and `sweptVolume` refuse. */
export function ratioFromVolumes(v: Volumes): number {
	return 1 + sweptVolume(v.bore, v.stroke) / clearanceVolume(v);
}

/**
 * Compression ratio that the charge really sees, 1: the volume where the intake closes over the volume at top dead center.
 *
 * Intake closing in deg after bottom dead center, 0 to 120. Geometry, slider-crank with rod.
 */
export function effectiveRatio(cylinder: Cylinder, intakeCloses: number): number {
	within('intake closing', intakeCloses, 0, 120);
	return cylinderVolume(cylinder, 180 - intakeCloses) / cylinderVolume(cylinder, 0);
}
