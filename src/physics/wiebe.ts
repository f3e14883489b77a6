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

/**
 * Writes the share still unburnt `y` durations after the start, 1 before it and held from the tail on, and the share burnt per
 * duration, the slope of the curve, 0 before the start and after the tail: at two places of a list from `at` on.
 */
export function burnInto(y: number, power: number, into: Float64Array, at: number): void {
	const steepness = y > 0 ? Math.min(tail, y) ** (power - 1) : 0;
	const unburnt = Math.exp(-efficiency * steepness * Math.min(tail, y));
	into[at] = unburnt;
	into[at + 1] = y < tail ? power * efficiency * steepness * unburnt : 0;
}

/** Durations after the start at which the share `x` is burnt: the curve turned round. `x` from 0 to under 1. */
export function burntAt(x: number, power = usualPower): number {
	return (-Math.log1p(-x) / efficiency) ** (1 / power);
}
