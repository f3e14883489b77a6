import { positive } from './range.ts';

/** Times what each is at 2000 rpm: deg from spark to the start of Wiebe's curve, its duration in deg, its exponent m. */
export interface BurnOverSpeed {
	readonly delay: number;
	readonly duration: number;
	readonly exponent: number;
}

/** Below it the delay's curve turns steep and then negative: everything is held at its figure there. */
const lowest = 1000;

/**
 * How the burn of a spark-ignition engine changes with its speed, in rpm, all else the same.
 *
 * Measured on passenger-car engines up to some 6000 rpm; beyond that it hardly changes any more. Errors: OutOfRange.
 * Source: Csallner, Dissertation, Technische Universitaet Muenchen (1981), as taken up by Witt (1999) and in Merker, Schwarz,
 * Stiesch & Otto, Simulating Combustion (figures from memory; each is 1 at 2000 rpm).
 */
export function burnOverSpeed(speed: number): BurnOverSpeed {
	positive('speed', speed);
	const n = Math.max(lowest, speed);
	return { delay: 1 + 400 / n - 8e5 / n ** 2, duration: 1.33 - 660 / n, exponent: 0.625 + 750 / n };
}
