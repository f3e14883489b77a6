import { bind } from '../expressions/bind.ts';
import type { Expression, Outcome } from '../expressions/tree.ts';
import { type State, valueIn } from '../graph/solve.ts';

/** Evaluates an expression of the rulebook on a solved state. Null (no condition) holds. */
export function conditionIn(state: State, expression: Expression | null): Outcome {
	if (expression === null) return true;
	return bind(expression, name => () => valueIn(state, name))();
}
