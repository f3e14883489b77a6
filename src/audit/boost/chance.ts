import { latinHypercube, type Points } from '../../graph/latin-hypercube.ts';
import { makeSampler, type Sampler } from '../../graph/sampling.ts';
import type { State } from '../../graph/solve.ts';
import { uncertainSlots } from '../../quantities/uncertainty.ts';
import { answerTo, type Sheet } from '../../sheet/sheet.ts';
import type { Model } from '../model.ts';

/** Draws of limits on one day: by limit, a figure a draw, Pa. What could not be worked out in a draw is passed at 0. */
export type LimitDraws = ReadonlyMap<string, Float64Array>;

/** Draws of limits of boost in a solved car: `count` of them, spread evenly or by what a fit left of the inputs. */
export function limitDraws(
	{ rulebook, quantities, graph }: Model,
	sheet: Sheet,
	state: State,
	limits: readonly string[],
	count: number,
	pointsFor: (sampler: Sampler) => Points = ({ names }) => latinHypercube(names, count),
): LimitDraws {
	const slots = limits.map(id => graph.slotOf.get(id)!);
	const uncertain = uncertainSlots(rulebook.questions, quantities, state, id => answerTo(sheet, id));
	const sampler = makeSampler(state, uncertain, slots);
	const points = pointsFor(sampler);
	const z = new Float64Array(sampler.dimensions);
	const draws = new Map(limits.map(id => [id, new Float64Array(count)]));
	for (let index = 0; index < count; index++) {
		points.point(index, z);
		const values = sampler.evaluate(z);
		for (const [at, id] of limits.entries()) {
			const value = values[slots[at]!];
			draws.get(id)![index] = typeof value === 'number' && Number.isFinite(value) ? value : 0;
		}
	}
	return draws;
}

/**
 * The draws of a fitted limit that count where the fit may have raised it and nothing near the step supports that: of each
 * share of cases the lower of before and after. Each draw keeps its rank, and with it what it shares with other limits.
 */
export function lowerOf(before: Float64Array, after: Float64Array): Float64Array {
	const sorted = before.slice().sort();
	const order = [...after.keys()].sort((a, b) => after[a]! - after[b]!);
	const lower = after.slice();
	for (const [rank, at] of order.entries()) lower[at] = Math.min(after[at]!, sorted[rank]!);
	return lower;
}

/** The share of draws in which any limit lies under a boost, and the limit that is then most often the lowest (or by itself). */
export function passedAt(draws: LimitDraws, boost: number): { readonly share: number; readonly first: string } {
	const lowest = lowestOf(draws);
	const under = lowest.filter(({ value }) => value < boost);
	const passed = under.length;
	const counts = new Map<string, number>();
	for (const { id } of passed > 0 ? under : lowest) counts.set(id, (counts.get(id) ?? 0) + 1);
	const [first = ''] = [...counts].sort((a, b) => b[1] - a[1])[0] ?? [];
	return { share: passed / lowest.length, first };
}

/** The highest boost at which so small a share of draws has passed any limit. */
export function highestWithin(draws: LimitDraws, share: number): number {
	const sorted = Float64Array.from(lowestOf(draws), ({ value }) => value).sort();
	return sorted[Math.floor(share * sorted.length)] ?? 0;
}

/** Of each draw the limit that lies lowest. */
function lowestOf(draws: LimitDraws): { readonly id: string; readonly value: number }[] {
	const [first] = draws.values();
	return Array.from({ length: first?.length ?? 0 }, (_, at) => {
		let [id, value] = ['', Number.POSITIVE_INFINITY];
		for (const [limit, figures] of draws) if (figures[at]! < value) [id, value] = [limit, figures[at]!];
		return { id, value };
	});
}
