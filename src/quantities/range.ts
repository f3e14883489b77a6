import { canonicalUnits } from '../units/kinds.ts';
import type { AnyQuantity, Range } from './quantity.ts';

/**
 * What a quantity can come to, in its own unit: as declared; a limit lies where it is looked for, a usual value
 * within its spread; every other number is 0 or more. None for a list, a yes or no, words.
 */
export function rangeOf(quantity: AnyQuantity): Range | null {
	if ('limit' in quantity) return [quantity.limit.from, quantity.limit.to];
	if ('value' in quantity) return [quantity.value - quantity.spread, quantity.value + quantity.spread];
	if ('range' in quantity && quantity.range) return quantity.range;
	return quantity.kind in canonicalUnits ? [0, null] : null;
}
