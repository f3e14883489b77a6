import { reach } from '../graph/paths.ts';
import { makeSampler } from '../graph/sampling.ts';
import type { State } from '../graph/solve.ts';
import type { Uncertain } from '../graph/uncertain.ts';
import type { Posterior } from './posterior.ts';
import { sharedVariance } from './shared-variance.ts';

/** Of a limit: the three inputs or sensors that leave most of it open, and what to measure. */
export interface Unsettled {
	readonly limit: string;
	readonly inputs: readonly string[];
	readonly measure: string | null;
}

/** Draws in which a limit is computed. */
const limitDraws = 400;
/** Shares of a limit's variance under this are noise. */
const minShare = 0.03;

/**
 * Of each limit what leaves most of it open: the share of its variance that goes with each input or sensor over the draws, so
 * much as would go if that were known outright.
 *
 * @param named by unknown: the id of its input or term
 * @param canMeasure whether an input can be found out; what a sensor is off always can, against a gauge
 */
export function unsettledIn(
	state: State,
	uncertain: readonly Uncertain[],
	{ draws, seen }: Posterior,
	named: readonly string[],
	limits: readonly string[],
	canMeasure: (id: string) => boolean,
): Unsettled[] {
	const { graph } = state;
	const { slotOf } = graph;
	const open = limits.filter(id => typeof state.values[slotOf.get(id)!] === 'number');
	const slots = open.map(id => slotOf.get(id)!);
	const sampler = makeSampler(state, uncertain, slots);
	const drawn = draws.slice(0, limitDraws);
	const figures = drawn.map(draw => {
		const values = sampler.evaluate(draw);
		return slots.map(slot => Number(values[slot] ?? Number.NaN));
	});
	const unknowns = [...named.keys()].filter(unknown => unknown < sampler.dimensions || seen.includes(unknown));
	const isSeen = new Set(seen);
	return open.flatMap((limit, at): Unsettled[] => {
		// In a draw where the limit has no place (a compressor that chokes before) there is nothing to follow.
		const placed = [...drawn.keys()].filter(draw => Number.isFinite(figures[draw]![at]!));
		const values = Float64Array.from(placed, draw => figures[draw]![at]!);
		if (values.length < limitDraws / 2 || values.every(value => value === values[0])) return [];
		const shares = new Map<string, number>();
		const above = reach([slots[at]!], slot => graph.feeds[slot]!);
		const moving = unknowns.filter(unknown => above.has(slotOf.get(named[unknown]!) ?? slots[at]!));
		const rows = [...placed.map(draw => draws[draw]!), ...draws.slice(limitDraws)];
		const all = sharedVariance(values, rows, moving, isSeen);
		for (const [index, unknown] of moving.entries()) {
			const share = all[index]!;
			if (share > minShare) shares.set(named[unknown]!, (shares.get(named[unknown]!) ?? 0) + share);
		}
		const inputs = [...shares].sort((a, b) => b[1] - a[1]).map(([id]) => id);
		const measure = inputs.find(id => id.startsWith('sensor: ') || canMeasure(id)) ?? null;
		return inputs.length === 0 ? [] : [{ limit, inputs: inputs.slice(0, 3), measure }];
	});
}
