import { positive, within } from './range.ts';

/** A cam and its spring at the valve: lift in m, advertised duration in deg of crank, force over the nose in N, moving mass in kg. */
export interface Valvetrain {
	readonly lift: number;
	readonly duration: number;
	readonly openForce: number;
	readonly mass: number;
}

/**
 * Engine speed, rpm, at which the spring no longer holds the lifter on the nose of the cam.
 *
 * The lift is taken as harmonic over the duration, lift / 2 (1 + cos(2 pi angle / duration)), whose hardest pull away from
 * the cam is over the nose: force = mass x lift / 2 x (2 pi / duration)^2 x speed^2. Estimate: real lobes pull 0.75 to 1.3
 * times as hard, and springs surge before. Errors: OutOfRange. Source: kinematics of harmonic motion, Shigley.
 */
export function floatSpeed({ lift, duration, openForce, mass }: Valvetrain): number {
	positive('valve lift', lift);
	within('duration', duration, 100, 400);
	positive('spring force', openForce);
	positive('moving mass', mass);
	const nose = (lift / 2) * (360 / duration) ** 2;
	return (Math.sqrt(openForce / (mass * nose)) * 60) / (2 * Math.PI);
}
