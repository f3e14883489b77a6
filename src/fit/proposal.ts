import { cholesky, dot, forward, identity, type Square } from './matrix.ts';
import type { Chance } from './random.ts';

/** Degrees of freedom of the tails: so long that no weight runs away. */
const freedom = 7;
/** The share of draws from the tails, and how much wider than its core the rest is drawn. */
const [tails, wider] = [0.25, 1.05] as const;

/** A cloud of points that is drawn from: normal about a mean, a quarter of it Student's t. */
export interface Cloud {
	readonly mean: Float64Array;
	draw(chance: Chance, into: Float64Array): void;
	/** The logarithm of its density. */
	logDensity(point: Float64Array): number;
}

/** `lower`: of the spread of its core, L Lt. */
export function makeCloud(mean: Float64Array, lower: Square): Cloud {
	const size = mean.length;
	const logDeterminant = lower.reduce((sum, row, at) => sum + Math.log(row[at]!), 0);
	const straight = new Float64Array(size);
	const apart = new Float64Array(size);
	const ofNormal = Math.log(1 - tails) - size * (Math.log(2 * Math.PI) / 2 + Math.log(wider));
	const ofTails =
		Math.log(tails) +
		logGammaOfHalf(freedom + size) -
		logGammaOfHalf(freedom) -
		(size / 2) * Math.log(freedom * Math.PI);
	return {
		mean,
		draw(chance, into) {
			let stretch: number = wider;
			if (chance.uniform() < tails) {
				let squares = 0;
				for (let at = 0; at < freedom; at++) squares += chance.normal() ** 2;
				stretch = Math.sqrt(freedom / squares);
			}
			for (let at = 0; at < size; at++) straight[at] = chance.normal() * stretch;
			for (let row = 0; row < size; row++) {
				let sum = mean[row]!;
				for (let at = 0; at <= row; at++) sum += lower[row]![at]! * straight[at]!;
				into[row] = sum;
			}
		},
		logDensity(point) {
			for (let at = 0; at < size; at++) apart[at] = point[at]! - mean[at]!;
			const solved = forward(lower, apart);
			const square = dot(solved, solved);
			const normal = ofNormal - square / (2 * wider * wider);
			const long = ofTails - ((freedom + size) / 2) * Math.log1p(square / freedom);
			const most = Math.max(normal, long);
			return most + Math.log(Math.exp(normal - most) + Math.exp(long - most)) - logDeterminant;
		},
	};
}

/** The logarithm of the gamma function at n / 2. */
function logGammaOfHalf(n: number): number {
	let sum = n % 2 === 0 ? 0 : Math.log(Math.PI) / 2;
	for (let at = n % 2 === 0 ? 2 : 1; at < n; at += 2) sum += Math.log(at / 2);
	return sum;
}

/** A cloud over weighted points; null where they are too few to span it. */
export function cloudOver(points: readonly Float64Array[], weights: ArrayLike<number>): Cloud | null {
	const size = points[0]!.length;
	const mean = new Float64Array(size);
	for (const [index, point] of points.entries())
		for (let at = 0; at < size; at++) mean[at]! += weights[index]! * point[at]!;
	const spread = identity(size).map(row => row.fill(0));
	for (const [index, point] of points.entries()) {
		const weight = weights[index]!;
		if (weight < 1e-12) continue;
		for (let row = 0; row < size; row++)
			for (let column = 0; column <= row; column++)
				spread[row]![column]! += weight * (point[row]! - mean[row]!) * (point[column]! - mean[column]!);
	}
	for (let row = 0; row < size; row++) {
		for (let column = 0; column < row; column++) spread[column]![row] = spread[row]![column]!;
		spread[row]![row]! += 1e-9;
	}
	const lower = cholesky(spread);
	return lower && makeCloud(mean, lower);
}
