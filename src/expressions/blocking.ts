import { bind, type Reader } from './bind.ts';
import { type Expression, operands } from './tree.ts';

/** Which names an undecided expression waits for, and which names it read on its way to an outcome. */
export interface Trace {
	readonly blocking: Set<string>;
	readonly read: Set<string>;
}

/**
 * Walks an expression the way its evaluation went: operands that a known part made idle are left out, and nothing that
 * does not apply here waits for anything.
 * Only for telling (missing answers, assumed values); verdicts come from `bind`.
 */
export function trace(tree: Expression, reader: Reader, into: Trace = { blocking: new Set(), read: new Set() }): Trace {
	walk(tree, reader, into, true);
	return into;
}

function walk(tree: Expression, reader: Reader, into: Trace, waits: boolean): void {
	const outcome = bind(tree, reader)();
	if (tree[0] === 'name') {
		into.read.add(tree[1]);
		if (waits && outcome === undefined) into.blocking.add(tree[1]);
		return;
	}
	for (const operand of inPlay(tree, reader)) walk(operand, reader, into, waits && outcome !== null);
}

function inPlay(tree: Expression, reader: Reader): Expression[] {
	const value = (part: Expression) => bind(part, reader)();
	if (tree[0] === '&&' || tree[0] === '||') {
		const decides = tree[0] === '||';
		const deciding = [tree[1], tree[2]].find(part => value(part) === decides);
		return deciding ? [deciding] : [tree[1], tree[2]];
	}
	if (tree[0] === '?:') {
		const test = value(tree[1]);
		if (test === undefined || test === null) return [tree[1]];
		return [tree[1], test ? tree[2] : tree[3]];
	}
	return operands(tree);
}
