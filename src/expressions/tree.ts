/**
 * A checked expression, as it is kept in the built rulebook: nested arrays, the operator first.
 *
 * It is what the rulebook's compiler makes of a CEL text (see rulebook/compile); nothing here can call, index or loop,
 * so an expression costs time in proportion to its length.
 */
export type Expression =
	| ['value', number | string | boolean]
	| ['list', readonly (number | string)[]]
	| ['name', string]
	| ['!' | '-' | 'size', Expression]
	| ['&&' | '||' | Comparison | '+' | '-' | '*' | '/' | 'in', Expression, Expression]
	| ['?:', Expression, Expression, Expression];

export type Comparison = '==' | '!=' | '<' | '<=' | '>' | '>=';

/** What a name may stand for: a number, a choice, a yes or no, or a list (choices ticked, readings, rows). */
export type Value = number | string | boolean | readonly unknown[];

/**
 * The outcome of reading a name or of an expression. `undefined`: not known. `null`: does not apply here
 * (an answer that is not in effect, a figure of boost on an engine without it).
 */
export type Outcome = Value | undefined | null;

/** The operands of a node, in order. */
export function operands(tree: Expression): Expression[] {
	if (tree[0] === 'value' || tree[0] === 'list' || tree[0] === 'name') return [];
	return tree.slice(1) as Expression[];
}

/** Every name an expression reads, in order of first appearance. */
export function namesIn(tree: Expression, into: Set<string> = new Set()): Set<string> {
	if (tree[0] === 'name') into.add(tree[1]);
	for (const operand of operands(tree)) namesIn(operand, into);
	return into;
}

/** The same expression with some names replaced by expressions (thresholds by what they stand for). */
export function substitute(tree: Expression, named: ReadonlyMap<string, Expression>): Expression {
	if (named.size === 0) return tree;
	if (tree[0] === 'name') return named.get(tree[1]) ?? tree;
	if (tree[0] === 'value' || tree[0] === 'list') return tree;
	const whole: unknown[] = [tree[0]];
	for (let place = 1; place < tree.length; place++) whole.push(substitute(tree[place] as Expression, named));
	return whole as Expression;
}
