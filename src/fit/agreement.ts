import { dot, eigen } from './matrix.ts';
import { curvatureOf, type Mode } from './mode.ts';
import { normalShare, type Problem } from './problem.ts';

/** Directions that readings tell less of than this share of the prior count with the noise. */
const told = 0.02;

/**
 * The chance that a right log lies as far from the answers as this one: small where it fits no car of them. Two sums of squares
 * are each chi-squared where answers, spreads and log are right: how far the few told directions had to go from what the
 * answers say, and what is then left of the readings. Judged apart, so that many quiet readings do not hide a sensor that is
 * off; the smaller chance, doubled.
 */
export function agreement(problem: Problem, unknowns: readonly number[], { point, slopes }: Mode): number {
	const seen = problem.at(point);
	if (!seen) return 0;
	const at = Float64Array.from(unknowns, unknown => point[unknown]!);
	const whole = dot(seen.residuals, seen.residuals) + dot(at, at);
	let [went, directions] = [0, 0];
	for (const { value, vector } of eigen(curvatureOf(slopes))) {
		if (value < told) break;
		went += (dot(vector, at) ** 2 * (1 + value)) / value;
		directions++;
	}
	const left = Math.max(0, whole - went);
	const ofLeft = upperShare(left, Math.max(1, seen.residuals.length - directions));
	return Math.min(1, 2 * Math.min(upperShare(went, directions), ofLeft));
}

/** The share of chi-squared above a value. Wilson & Hilferty 1931. */
export function upperShare(value: number, degrees: number): number {
	if (degrees === 0) return 1;
	const spread = 2 / (9 * degrees);
	return normalShare(-(Math.cbrt(value / degrees) - (1 - spread)) / Math.sqrt(spread));
}
