import { type Graph, slotNamed } from '../graph/graph.ts';
import type { State } from '../graph/solve.ts';
import { perPull } from '../log/quantities.ts';
import type { AnyQuantity } from '../quantities/quantity.ts';
import { canonicalUnits } from '../units/kinds.ts';
import type { QuantityValue } from './audit.ts';

/** The unit a quantity is given in; null for a list, a yes or no, words. */
export function unitOf({ id, kind, unit }: AnyQuantity): string | null {
	if (perPull.has(id)) return null;
	if (unit !== undefined) return unit;
	return kind in canonicalUnits ? canonicalUnits[kind as keyof typeof canonicalUnits] || '1' : null;
}

/** The quantities that are printed, the same for every sheet: where each stands in the graph, and the unit that it is given in. */
export interface PrintedQuantities {
	readonly each: readonly { readonly id: string; readonly slot: number; readonly unit: string | null }[];
	/** Their ids without values: hundreds of keys are copied at once in an eighth of the time that it takes to add one by one. */
	readonly blank: Readonly<Record<string, null>>;
}

/** Lays out what is printed. */
export function printedQuantities(graph: Graph, quantities: readonly AnyQuantity[]): PrintedQuantities {
	const printed = quantities.filter(({ kind }) => kind !== 'hidden');
	return {
		each: printed.map(quantity => ({
			id: quantity.id,
			slot: slotNamed(graph, quantity.id),
			unit: unitOf(quantity),
		})),
		blank: Object.fromEntries(printed.map(({ id }) => [id, null])),
	};
}

/** Every quantity with its value, band and what it rests on. `bands` gives low and high where draws were made. */
export function quantityValues(
	state: State,
	{ each, blank }: PrintedQuantities,
	bands: (slot: number) => readonly [number, number] | null,
): Record<string, QuantityValue> {
	const values: Record<string, QuantityValue | null> = { ...blank };
	for (const { id, slot, unit } of each) {
		const value = state.values[slot] ?? null;
		const band = typeof value === 'number' ? bands(slot) : null;
		values[id] = {
			value,
			unit,
			low: band?.[0] ?? null,
			high: band?.[1] ?? null,
			bound: state.bounds.get(slot) ?? null,
			missing: value === null ? state.missing[slot]! : [],
			assumed: value === null ? [] : state.assumed[slot]!,
		};
	}
	return values as Record<string, QuantityValue>;
}

/** The ids a quantity is worked out from. */
export function quantityInputs(quantity: AnyQuantity): readonly string[] {
	if ('limit' in quantity) {
		const { vary, until, reaches } = quantity.limit;
		return [vary, until, ...(typeof reaches === 'string' ? [reaches] : [])];
	}
	if ('whatIf' in quantity) return [quantity.whatIf.of, ...Object.values(quantity.whatIf.with)];
	return 'inputs' in quantity ? quantity.inputs : [];
}
