import type { Outcome } from '../expressions/tree.ts';
import { slotNamed } from '../graph/graph.ts';
import type { State } from '../graph/solve.ts';
import { evaluate } from '../graph/solve.ts';
import type { AnyQuantity, LimitQuantity } from '../quantities/quantity.ts';
import type { Rulebook } from '../rulebook/rulebook.ts';
import type { UnitSet } from '../sheet/question.ts';
import { textIn } from '../sheet/text.ts';
import type { LimitRung } from './audit.ts';
import { unitOf } from './quantity-values.ts';

/** The slots of all limits that a ladder may have. */
export const limitSlots = ({ graph }: State, { limits }: Rulebook): number[] =>
	Object.keys(limits).map(id => slotNamed(graph, id));

/** The ladder: every limit that rules/limits.yaml words, lowest first, then those that could not be placed. */
export function ladder(
	state: State,
	quantities: readonly AnyQuantity[],
	rulebook: Rulebook,
	bands: (slot: number) => readonly [number, number] | null,
	units: UnitSet,
): LimitRung[] {
	const limits = quantities.filter(
		(quantity): quantity is LimitQuantity => 'limit' in quantity && quantity.id in rulebook.limits,
	);
	const rungs = limits.flatMap(quantity => rung(state, quantity, rulebook, bands, units) ?? []);
	const placed = rungs
		.filter(({ value }) => value !== null)
		.sort((a, b) => a.value! - b.value! || (a.limit < b.limit ? -1 : 1));
	return [...placed, ...rungs.filter(({ value }) => value === null)];
}

function rung(
	state: State,
	quantity: LimitQuantity,
	rulebook: Rulebook,
	bands: (slot: number) => readonly [number, number] | null,
	units: UnitSet,
): LimitRung | null {
	const slot = slotNamed(state.graph, quantity.id);
	const value = state.values[slot];
	if (value === null) return null;
	const { vary } = quantity.limit;
	const target = state.values[slotNamed(state.graph, vary)];
	const known = typeof value === 'number' ? value : null;
	const band = known === null ? null : bands(slot);
	const number = (outcome: Outcome): number | null => (typeof outcome === 'number' ? outcome : null);
	return {
		limit: quantity.id,
		title: rulebook.limits[quantity.id]!.title,
		value: known,
		unit: unitOf(quantity) ?? '1',
		low: band?.[0] ?? null,
		high: band?.[1] ?? null,
		bound: state.bounds.get(slot) ?? null,
		of_target: known !== null && typeof target === 'number' && target > 0 ? known / target : null,
		power: known === null ? null : number(evaluate(state, ['engine.power'], { [vary]: known })[0]),
		raise: textIn(rulebook.limits[quantity.id]!.raise, units),
		missing: known === null ? state.missing[slot]! : [],
	};
}
