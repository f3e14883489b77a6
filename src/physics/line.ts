import { frictionFactor, reynolds } from './friction.ts';
import { pipeVelocity } from './pipe.ts';
import { positive, within } from './range.ts';

/** Roughness of drawn tubing and smooth hose, m. Source: Moody 1944, as in Crane TP-410 and White, Fluid Mechanics. */
export const drawnTubing = 1.5e-6;

/**
 * Loss of one elbow, in velocity heads. A tight, threaded or drilled 90 degree elbow: 30 fT with fT 0.030 near 9 mm bore.
 *
 * Source: Crane TP-410; fT by python3-fluids. A swept bend of 1.5 diameters has 0.2 to 0.4, so this errs to the safe side.
 */
export const elbowLoss = 0.9;

/** A fuel line: bore and length in m, wall roughness in m, elbows, smallest bore on the way in m, density kg/m3, viscosity m2/s. */
export interface Line {
	readonly bore: number;
	readonly length: number;
	readonly roughness: number;
	readonly elbows: number;
	/** The narrowest fitting; null, or not narrower than the line: none. Its own length is not counted. */
	readonly smallestBore: number | null;
	readonly density: number;
	readonly viscosity: number;
}

/** Velocity heads lost into a sharp narrowing, of the narrow side; beta = narrow over wide, 0 to 1. Crane TP-410: 0.5 (1 - beta^2). */
export function contractionLoss(beta: number): number {
	within('bore ratio', beta, 0, 1);
	return 0.5 * (1 - beta * beta);
}

/** Velocity heads lost out of a sharp narrowing, of the narrow side. Borda-Carnot, as in Crane TP-410: (1 - beta^2)^2. */
export function expansionLoss(beta: number): number {
	within('bore ratio', beta, 0, 1);
	return (1 - beta * beta) ** 2;
}

/** Pressure of one velocity head, Pa: density in kg/m3, speed in m/s. */
function velocityHead(density: number, velocity: number): number {
	return (density * velocity * velocity) / 2;
}

/**
 * Pressure lost in a line, Pa, at a flow in kg/s (0 or more): wall friction, elbows, and one narrow place in and out.
 *
 * Errors: OutOfRange. Source: Darcy-Weisbach and loss coefficients in the manner of Crane TP-410. No height, no filter.
 */
export function lineLoss(line: Line, flow: number): number {
	within('length', line.length, 0, 1000);
	within('elbows', line.elbows, 0, 1000);
	const velocity = pipeVelocity(flow, line.density, line.bore);
	const re = reynolds(velocity, line.bore, line.viscosity);
	if (re === 0) return 0;
	const friction = frictionFactor(re, line.roughness / line.bore);
	const heads = (friction * line.length) / line.bore + line.elbows * elbowLoss;
	return heads * velocityHead(line.density, velocity) + narrowLoss(line, flow);
}

function narrowLoss({ smallestBore, bore, density }: Line, flow: number): number {
	if (smallestBore === null) return 0;
	positive('smallest bore', smallestBore);
	if (smallestBore >= bore) return 0;
	const beta = smallestBore / bore;
	const velocity = pipeVelocity(flow, density, smallestBore);
	return (contractionLoss(beta) + expansionLoss(beta)) * velocityHead(density, velocity);
}
