import { positive, within } from './range.ts';

/** Area of a round bore, m2, from its diameter in m. Errors: OutOfRange. */
export function boreArea(bore: number): number {
	positive('bore', bore);
	return (Math.PI / 4) * bore * bore;
}

/** Mean speed in a round bore, m/s: flow in kg/s (0 or more), density in kg/m3, bore in m. Errors: OutOfRange. Continuity. */
export function pipeVelocity(flow: number, density: number, bore: number): number {
	within('flow', flow, 0, Number.MAX_VALUE);
	positive('density', density);
	return flow / (density * boreArea(bore));
}
