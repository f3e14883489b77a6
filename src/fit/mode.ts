import { cholesky, dot, solveWith } from './matrix.ts';
import type { Problem } from './problem.ts';

/** A point that the readings and the prior agree on best, with how the residuals move there. */
export interface Mode {
	readonly point: Float64Array;
	/** By unknown: the change of each residual, and that of the margin of each fact. */
	readonly slopes: readonly Float64Array[];
	readonly marginSlopes: readonly Float64Array[];
	/** The logarithm of the density after the log, up to a constant: facts that held left out. */
	readonly logDensity: number;
}

export type Slopes = Pick<Mode, 'slopes' | 'marginSlopes'>;

/** The step that slopes are measured with, in standard deviations of the prior. */
const slopeStep = 0.01;
const maxRounds = 60;
/** The gain of a step, as a logarithm, under which it has converged; standard deviations of the prior by which two modes differ. */
const [convergence, modeDistance] = [1e-3, 0.3] as const;

/**
 * The most likely point, from a start: Gauss and Newton's method with Levenberg's damping. Facts that held are left out; they
 * have no residual. `near`: a mode whose slopes serve until they lead nowhere. Null where the model cannot be evaluated at the
 * start.
 */
export function modeFrom(
	problem: Problem,
	unknowns: readonly number[],
	start: Float64Array,
	near: Mode | null = null,
): Mode | null {
	const point = start.slice();
	const first = problem.at(point);
	if (!first) return null;
	let residuals = first.residuals.slice();
	let cost = costOf(residuals, point, unknowns);
	let damping = 1e-3;
	/** One step by slopes; what it gained. */
	const step = ({ slopes }: Slopes): number => {
		const before = cost;
		const curvature = curvatureOf(slopes);
		const downhill = Float64Array.from(unknowns, (unknown, at) => -dot(slopes[at]!, residuals) - point[unknown]!);
		for (let trial = 0; trial < 6 && cost === before; trial++) {
			const damped = curvature.map((row, at) => row.with(at, row[at]! + 1 + damping));
			const move = solveWith(cholesky(damped)!, downhill);
			const tried = point.slice();
			for (const [at, unknown] of unknowns.entries()) tried[unknown]! += move[at]!;
			const seen = problem.at(tried);
			const there = seen ? costOf(seen.residuals, tried, unknowns) : Number.POSITIVE_INFINITY;
			damping = there < cost ? Math.max(1e-6, damping / 10) : Math.max(0.1, damping * 8);
			if (!(there < cost)) continue;
			cost = there;
			point.set(tried);
			residuals = seen!.residuals.slice();
		}
		return before - cost;
	};
	let slopes: Slopes | null = near;
	for (let round = 0; round < maxRounds; round++) {
		const isFresh = slopes === null;
		slopes ??= slopesAt(problem, unknowns, point);
		if (!slopes) return null;
		if (step(slopes) >= convergence) continue;
		if (isFresh) return { point, slopes: slopes.slopes, marginSlopes: slopes.marginSlopes, logDensity: -cost };
		if (near && unknowns.every(unknown => Math.abs(point[unknown]! - near.point[unknown]!) < modeDistance)) return near;
		slopes = null;
		damping = 1e-3;
	}
	return null;
}

const costOf = (residuals: Float64Array, point: Float64Array, unknowns: readonly number[]): number =>
	(dot(residuals, residuals) + unknowns.reduce((sum, unknown) => sum + point[unknown]! ** 2, 0)) / 2;

/** How residuals and margins move with each unknown; null where the model cannot be evaluated on either side. */
export function slopesAt(problem: Problem, unknowns: readonly number[], point: Float64Array): Slopes | null {
	const here = problem.at(point);
	if (!here) return null;
	const [residuals, margins] = [here.residuals.slice(), here.margins.slice()];
	const shifted = point.slice();
	const slopes: Float64Array[] = [];
	const marginSlopes: Float64Array[] = [];
	for (const unknown of unknowns) {
		const side = [slopeStep, -slopeStep].find(by => {
			shifted[unknown] = point[unknown]! + by;
			const there = problem.at(shifted);
			if (!there) return false;
			slopes.push(there.residuals.map((one, at) => (one - residuals[at]!) / by));
			marginSlopes.push(there.margins.map((one, at) => (one - margins[at]!) / by));
			return true;
		});
		shifted[unknown] = point[unknown]!;
		if (side === undefined) return null;
	}
	return { slopes, marginSlopes };
}

/** Jt J, by the unknowns. */
export function curvatureOf(slopes: readonly Float64Array[]): Float64Array[] {
	const made = slopes.map(() => new Float64Array(slopes.length));
	for (let row = 0; row < slopes.length; row++)
		for (let column = 0; column <= row; column++)
			made[row]![column] = made[column]![row] = dot(slopes[row]!, slopes[column]!);
	return made;
}

/** The unknowns that any reading moves with, or any fact, about a point. */
export function seenUnknowns(problem: Problem, about: Float64Array): number[] {
	const here = problem.at(about);
	if (!here) return [];
	const before = [...here.residuals, ...here.margins];
	const shifted = about.slice();
	return problem.candidates.filter(unknown => {
		const moves = [0.3, -0.3].some(by => {
			shifted[unknown] = about[unknown]! + by;
			const there = problem.at(shifted);
			return !there || [...there.residuals, ...there.margins].some((one, at) => one !== before[at]);
		});
		shifted[unknown] = about[unknown]!;
		return moves;
	});
}
