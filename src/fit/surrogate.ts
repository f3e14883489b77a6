import { leadingDirections } from './leading-directions.ts';
import { dot } from './matrix.ts';
import { logOfFact, type Problem, slopeOfFact } from './problem.ts';

/** Standard deviations of the prior that the grid of each unknown reaches either way, and its step. */
const [reach, step] = [4, 0.5] as const;
const segments = (2 * reach) / step;
/** Change of the outputs by one deviation of an unknown from which its pairs are tried, and that of a pair from which it is used. */
const [minMain, minInteraction] = [0.3, 0.05] as const;
/** Changes of residuals within so many deviations of an unknown are reproduced but for so much. */
const [near, tolerance] = [2, 0.1] as const;

/** What two unknowns do together: by output, at one deviation of each from the mode. */
interface Pair {
	readonly one: number;
	readonly other: number;
	readonly change: Float64Array;
}

/**
 * What a problem says as sums: at the mode, what each unknown does by itself on a grid, what pairs do together (cut-HDMR, Rabitz
 * & Alis 1999), in the few directions in which residuals move at all. It takes a small part of the model's time and has slopes.
 * It leads a draw; the model accepts it.
 */
export class Surrogate {
	readonly unknowns: readonly number[];
	/** In how many directions residuals move. */
	readonly directions: number;
	/** By unknown, how each output moves with it where it was last evaluated: residuals along their directions, then margins. */
	readonly slopes: readonly Float64Array[];
	private readonly doubts: readonly number[];
	private readonly center: Float64Array;
	/** Residuals along their directions, then the margins of facts. */
	private readonly base: Float64Array;
	/** By unknown: for each segment of its grid and each output a cubic, lowest power first. */
	private readonly cubics: readonly Float64Array[];
	/** By unknown, what it changes in each output where it was last followed to, and where that is. */
	private readonly changes: readonly Float64Array[];
	private readonly followed: Float64Array;
	private readonly pairs: readonly Pair[];
	private readonly outputs: Float64Array;

	/** `mode`: where the model can be evaluated. */
	constructor(problem: Problem, unknowns: readonly number[], mode: Float64Array) {
		const facts = problem.doubts.length;
		this.unknowns = unknowns;
		this.doubts = problem.doubts;
		this.center = Float64Array.from(unknowns, unknown => mode[unknown]!);
		const base = outputsAt(problem, mode)!;
		const shifted = mode.slice();
		/** The change of the outputs with some unknowns elsewhere; null where the model cannot be evaluated. */
		const change = (...moved: (readonly [unknown: number, to: number])[]): Float64Array | null => {
			for (const [unknown, to] of moved) shifted[unknown] = to;
			const there = outputsAt(problem, shifted);
			for (const [unknown] of moved) shifted[unknown] = mode[unknown]!;
			return there?.map((one, at) => one - base[at]!) ?? null;
		};
		const knots = unknowns.map(unknown =>
			withGapsFilled(Array.from({ length: segments + 1 }, (_, knot) => change([unknown, knot * step - reach]))),
		);
		const aside = unknowns.map(unknown => change([unknown, mode[unknown]! + 1]));
		const strong = [...unknowns.keys()].filter(at => aside[at] && length(aside[at]) > minMain);
		const pairs = strong.flatMap((one, index) =>
			strong.slice(0, index).flatMap((other): Pair[] => {
				const [a, b] = [unknowns[one]!, unknowns[other]!];
				const both = change([a, mode[a]! + 1], [b, mode[b]! + 1]);
				const more = both?.map((value, at) => value - aside[one]![at]! - aside[other]![at]!);
				return more && length(more) > minInteraction ? [{ one, other, change: more }] : [];
			}),
		);
		const residuals = base.length - facts;
		const directions = leadingDirections(
			[base, ...knots.flatMap(all => all.slice((reach - near) / step, (reach + near) / step + 1))].map(all =>
				all.subarray(0, residuals),
			),
			tolerance,
		);
		this.directions = directions.length;
		const reduced = (all: Float64Array) =>
			Float64Array.of(...directions.map(direction => dot(direction, all)), ...all.subarray(residuals));
		this.base = reduced(base);
		this.cubics = knots.map(all => cubicsThrough(all.map(reduced)));
		this.pairs = pairs.map(pair => ({ ...pair, change: reduced(pair.change) }));
		this.outputs = this.base.slice();
		this.slopes = unknowns.map(() => this.base.slice());
		this.changes = unknowns.map(() => this.base.slice());
		this.followed = new Float64Array(unknowns.length).fill(Number.NaN);
	}

	/** The logarithm of the likelihood at a point (by unknown), up to a constant; its slopes are written to `gradient`. */
	logLikelihood(point: Float64Array, gradient: Float64Array): number {
		const { outputs, pairs, center, doubts, slopes } = this;
		outputs.set(this.base);
		for (let unknown = 0; unknown < slopes.length; unknown++) this.add(unknown, point[unknown]!, outputs);
		for (const { one, other, change } of pairs) {
			const product = (point[one]! - center[one]!) * (point[other]! - center[other]!);
			for (let at = 0; at < change.length; at++) outputs[at]! += product * change[at]!;
		}
		// From here on they are by how much the logarithm rises with each output.
		const residuals = this.directions;
		let height = 0;
		for (let at = 0; at < residuals; at++) {
			height -= outputs[at]! ** 2 / 2;
			outputs[at] = -outputs[at]!;
		}
		for (let at = residuals; at < outputs.length; at++) {
			const doubt = doubts[at - residuals]!;
			height += logOfFact(doubt, outputs[at]!);
			outputs[at] = slopeOfFact(doubt, outputs[at]!);
		}
		for (let at = 0; at < slopes.length; at++) gradient[at] = dot(outputs, slopes[at]!);
		for (const { one, other, change } of pairs) {
			const sum = dot(outputs, change);
			gradient[one]! += sum * (point[other]! - center[other]!);
			gradient[other]! += sum * (point[one]! - center[one]!);
		}
		return height;
	}

	/** Adds the change of the outputs with one unknown by itself; how they move with it there stands in its slopes. */
	add(unknown: number, to: number, outputs: Float64Array): void {
		// `Straightened` asks for the same place just before.
		if (this.followed[unknown] !== to) this.follow(unknown, to);
		const changes = this.changes[unknown]!;
		for (let at = 0; at < changes.length; at++) outputs[at]! += changes[at]!;
	}

	private follow(unknown: number, to: number): void {
		this.followed[unknown] = to;
		const changes = this.changes[unknown]!;
		const slopes = this.slopes[unknown]!;
		// A trajectory that diverged: there is no value, and it is refused.
		if (Number.isNaN(to)) {
			changes.fill(Number.NaN);
			slopes.fill(Number.NaN);
			return;
		}
		const place = (to + reach) / step;
		const segment = Math.max(0, Math.min(segments - 1, Math.floor(place)));
		// Beyond the grid it goes on straight.
		const t = Math.max(0, Math.min(1, place - segment));
		const beyond = place - segment - t;
		const cubics = this.cubics[unknown]!;
		for (let at = 0, from = 4 * segment * changes.length; at < changes.length; at++, from += 4) {
			const b = cubics[from + 1]!;
			const c = cubics[from + 2]!;
			const d = cubics[from + 3]!;
			const slope = b + t * (2 * c + 3 * d * t);
			changes[at] = cubics[from]! + t * (b + t * (c + d * t)) + beyond * slope;
			slopes[at] = slope / step;
		}
	}
}

/** Residuals, then margins. */
function outputsAt(problem: Problem, point: Float64Array): Float64Array | null {
	const seen = problem.at(point);
	return seen && Float64Array.of(...seen.residuals, ...seen.margins);
}

const length = (values: Float64Array): number => Math.sqrt(dot(values, values));

/** With the changes of the nearest knot that is known in place of those that are not. */
function withGapsFilled(knots: readonly (Float64Array | null)[]): Float64Array[] {
	return knots.map((one, knot) => {
		let found = one;
		for (let by = 1; !found; by++) found = knots[knot - by] ?? knots[knot + by] ?? null;
		return found;
	});
}

/** By segment the cubics through the knots, smooth from one to the next (Catmull & Rom 1974), one after the other. */
function cubicsThrough(knots: readonly Float64Array[]): Float64Array {
	const slopeAt = (knot: number, output: number): number => {
		const [before, after] = [Math.max(0, knot - 1), Math.min(segments, knot + 1)];
		return (knots[after]![output]! - knots[before]![output]!) / (after - before);
	};
	return Float64Array.from(
		knots.slice(1).flatMap((knot, segment) =>
			[...knot.keys()].flatMap(output => {
				const [from, to] = [knots[segment]![output]!, knot[output]!];
				const [left, right] = [slopeAt(segment, output), slopeAt(segment + 1, output)];
				return [from, left, 3 * (to - from) - 2 * left - right, left + right - 2 * (to - from)];
			}),
		),
	);
}
