import { bind } from '../expressions/bind.ts';
import type { Expression, Outcome } from '../expressions/tree.ts';
import type { State } from '../graph/solve.ts';

/** Evaluates an expression of the rulebook on a solved state. Null (no condition) holds. */
export function conditionIn(state: State, expression: Expression | null): Outcome {
	if (expression === null) return true;
	return bind(expression, name => () => valueIn(state, name))();
}

/** The value of an answer or a quantity in a solved state. */
export function valueIn(state: State, id: string): Outcome {
	const slot = state.graph.slotOf.get(id);
	return slot === undefined ? undefined : state.values[slot];
}

/** The number of an answer or a quantity; NaN where it is not known or none. */
export function numberIn(state: State, id: string): number {
	const value = valueIn(state, id);
	return typeof value === 'number' ? value : Number.NaN;
}
