import type { State } from '../graph/solve.ts';
import { nineOfTen, type Uncertain } from '../graph/uncertain.ts';
import type { Declared } from '../log/declared.ts';
import type { CarProblem } from './car-problem.ts';
import type { Posterior } from './posterior.ts';
import { sensorErrors } from './terms.ts';

/** Low, middle and high: a twentieth lies under the low, a twentieth over the high. */
export type Band = readonly [low: number, middle: number, high: number];

/** An input or what a sensor is off (a share, or in its unit), before the log and after it. */
export interface Moved {
	readonly id: string;
	readonly before: Band;
	readonly after: Band;
}

/** An input moved whose spread is under this share of before, or whose mean lies more than so many deviations from before. */
const [narrowed, shifted] = [0.8, 0.5] as const;

/** The inputs and sensors whose draws are shifted or narrowed against the answers. `mean`: of the draws. */
export function movedBy(
	problem: CarProblem,
	found: Posterior,
	mean: Float64Array,
	state: State,
	uncertain: readonly Uncertain[],
	declared: Declared,
): Moved[] {
	const seen = new Set(found.seen);
	const hasMoved = (unknown: number) => {
		if (!seen.has(unknown)) return false;
		const square = found.draws.reduce((sum, draw) => sum + (draw[unknown]! - mean[unknown]!) ** 2, 0);
		return Math.sqrt(square / found.draws.length) < narrowed || Math.abs(mean[unknown]!) > shifted;
	};
	const bandOver = (unknown: number, value: (deviate: number) => number): Pick<Moved, 'before' | 'after'> => {
		const sorted = Float64Array.from(found.draws, draw => value(draw[unknown]!)).sort();
		const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))]!;
		return { before: [value(-nineOfTen), value(0), value(nineOfTen)], after: [at(0.05), at(0.5), at(0.95)] };
	};
	const base = problem.car.sampler.dimensions;
	const errors = sensorErrors(declared);
	return [
		...uncertain.flatMap(({ slot, dimensions, apply }): Moved[] => {
			const value = state.values[slot];
			const unknown = problem.car.sampler.first.get(slot)!;
			if (dimensions !== 1 || typeof value !== 'number' || !hasMoved(unknown)) return [];
			return [
				{ id: state.graph.nodes[slot]!.id, ...bandOver(unknown, deviate => apply(value, [deviate], 0) as number) },
			];
		}),
		...problem.terms.flatMap(({ id, channel }, at): Moved[] => {
			const scale = channel === null ? null : errors[channel as keyof typeof errors];
			return scale === null || !hasMoved(base + at) ? [] : [{ id, ...bandOver(base + at, deviate => scale * deviate) }];
		}),
	];
}
