/**
 * Wiebe's burn curve: the share burnt is 1 - exp(-5 y^power), y in whole durations since the start.
 *
 * After one duration it has reached 99.3 %; it runs on until `tail` durations, where all but 3e-7 is burnt.
 * The power is Wiebe's m + 1, 2.6 to 5; without one it is the usual 3.
 * Source: Heywood, Internal Combustion Engine Fundamentals, section 9.2 (a = 5, m = 2 as usual values).
 */
const efficiency = 5;
export const usualPower = 3;

/** Durations after which nothing worth counting is left to burn. */
export const tail = 1.5;

/** Share still unburnt `y` durations after the start: 1 before it, held from the tail on. */
export function unburntAt(y: number, power = usualPower): number {
	return y > 0 ? Math.exp(-efficiency * Math.min(tail, y) ** power) : 1;
}

/** Share burnt per duration, the slope of the curve, where `unburnt` is still to burn; 0 before the start and after the tail. */
export function burnRate(y: number, unburnt: number, power = usualPower): number {
	return y > 0 && y < tail ? power * efficiency * y ** (power - 1) * unburnt : 0;
}

/** Durations after the start at which the share `x` is burnt: the curve turned round. `x` from 0 to under 1. */
export function burntAt(x: number, power = usualPower): number {
	return (-Math.log1p(-x) / efficiency) ** (1 / power);
}
