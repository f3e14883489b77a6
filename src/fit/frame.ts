import { cholesky, dot, eigen, identity, solveWith } from './matrix.ts';
import { curvatureOf, type Mode } from './mode.ts';
import type { Problem } from './problem.ts';
import { type Cloud, makeCloud } from './proposal.ts';
import type { Chance } from './random.ts';

/** Readings that show less than this share of what the prior shows in a direction leave it to the prior. */
const leastInformed = 0.02;

/**
 * The few directions in which readings or facts show something, as an orthonormal basis; across them points are prior draws.
 * Cui et al. 2014, the likelihood-informed subspace, over all modes at once.
 */
export interface Frame {
	/** Places of the unknowns that anything seen moves with. */
	readonly unknowns: readonly number[];
	readonly basis: readonly Float64Array[];
}

export function frameOf(unknowns: readonly number[], modes: readonly Mode[]): Frame {
	const size = unknowns.length;
	const summed = identity(size).map(row => row.fill(0));
	for (const { slopes } of modes)
		for (const [row, values] of curvatureOf(slopes).entries())
			for (const [column, value] of values.entries()) summed[row]![column]! += value / modes.length;
	const basis = eigen(summed).flatMap(({ value, vector }) => (value > leastInformed ? [vector] : []));
	for (const { marginSlopes } of modes)
		for (const at of marginSlopes[0]!.keys()) {
			const direction = Float64Array.from(marginSlopes, one => one[at]!);
			const length = Math.sqrt(dot(direction, direction));
			if (length < leastInformed) continue;
			for (const one of basis) subtract(direction, one, dot(direction, one));
			const left = Math.sqrt(dot(direction, direction));
			if (left > 0.05 * length) basis.push(direction.map(one => one / left));
		}
	return { unknowns, basis };
}

function subtract(from: Float64Array, what: Float64Array, times: number): void {
	for (let at = 0; at < from.length; at++) from[at]! -= times * what[at]!;
}

/** The coordinates of a point in the frame. */
export function within({ unknowns, basis }: Frame, point: Float64Array): Float64Array {
	return Float64Array.from(basis, direction => {
		let sum = 0;
		for (let at = 0; at < unknowns.length; at++) sum += direction[at]! * point[unknowns[at]!]!;
		return sum;
	});
}

/** A point with these coordinates in the frame, and across it as `across` has them; `across` becomes the point. */
export function put(frame: Frame, coordinates: Float64Array, across: Float64Array): Float64Array {
	const there = within(frame, across);
	for (const [at, direction] of frame.basis.entries()) {
		const by = coordinates[at]! - there[at]!;
		for (const [place, unknown] of frame.unknowns.entries()) across[unknown]! += by * direction[place]!;
	}
	return across;
}

/** Draws of the prior of the unknowns; the others stay 0. */
export function drawAcross({ unknowns }: Frame, chance: Chance, dimensions: number): Float64Array {
	const point = new Float64Array(dimensions);
	for (const unknown of unknowns) point[unknown] = chance.normal();
	return point;
}

/** How the residuals move along the frame about a mode, and what is left to the directions of it there. */
export interface Ridge {
	readonly cloud: Cloud;
	/**
	 * The coordinates in the frame that readings and prior agree on best where a point lies across it: two of Newton's steps
	 * with the slopes of the mode. Products of inputs bend the ridge of likely points by many of its widths, and this follows.
	 */
	centerAt(across: Float64Array): Float64Array;
}

const newtonSteps = 2;

export function ridgeOf(problem: Problem, frame: Frame, { point, slopes }: Mode): Ridge {
	const turned = frame.basis.map(direction => {
		const along = new Float64Array(slopes[0]!.length);
		for (const [at, slope] of slopes.entries()) subtract(along, slope, -direction[at]!);
		return along;
	});
	const precision = curvatureOf(turned).map((row, at) => row.with(at, row[at]! + 1));
	const factor = cholesky(precision)!;
	const spread = identity(frame.basis.length).map(row => solveWith(factor, row));
	const middle = within(frame, point);
	const costOf = (residuals: Float64Array, at: Float64Array) => dot(residuals, residuals) + dot(at, at);
	return {
		cloud: makeCloud(new Float64Array(middle.length), cholesky(spread)!),
		centerAt(across) {
			let center = middle;
			let least = Number.POSITIVE_INFINITY;
			let next = middle;
			for (let step = 0; ; step++) {
				const seen = problem.at(put(frame, next, across));
				const cost = seen ? costOf(seen.residuals, next) : Number.POSITIVE_INFINITY;
				if (!(cost < least)) return center;
				[center, least] = [next, cost];
				if (step === newtonSteps) return center;
				const { residuals } = seen!;
				const downhill = Float64Array.from(turned, (along, at) => -dot(along, residuals) - center[at]!);
				const move = solveWith(factor, downhill);
				next = center.map((one, at) => one + move[at]!);
			}
		},
	};
}
