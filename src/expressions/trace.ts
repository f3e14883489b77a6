import { type Bound, bind, type Reader } from './bind.ts';
import { type Expression, operands } from './tree.ts';

/** Which names an undecided expression waits for, and which names it read on its way to an outcome. */
export interface Trace {
	readonly blocking: string[];
	readonly read: string[];
}

/** An expression bound part by part, so that the way its evaluation went can be walked again and again. */
export interface Traceable {
	readonly tree: Expression;
	readonly now: Bound;
	readonly parts: readonly Traceable[];
}

/** Binds an expression and each of its parts. */
export function traceable(tree: Expression, reader: Reader): Traceable {
	const parts = operands(tree).map(part => traceable(part, reader));
	return { tree, now: bind(tree, reader, part => parts.find(({ tree }) => tree === part)!.now), parts };
}

/**
 * Walks an expression the way its evaluation went: operands that a known part made idle are left out, and nothing that
 * does not apply here waits for anything.
 * Only for the trace (missing answers, assumed values); verdicts come from `bind`.
 */
export function trace(whole: Traceable, into: Trace = { blocking: [], read: [] }): Trace {
	walk(whole, into, true);
	return into;
}

function walk({ tree, now, parts }: Traceable, into: Trace, waits: boolean): void {
	if (tree[0] === 'value' || tree[0] === 'list') return;
	const outcome = now();
	if (tree[0] === 'name') {
		note(tree[1], into.read);
		if (waits && outcome === undefined) note(tree[1], into.blocking);
		return;
	}
	for (const part of inPlay(tree, parts)) walk(part, into, waits && outcome !== null);
}

/** Once each: an expression has a handful of names, and a list of them costs less than a set. */
function note(name: string, names: string[]): void {
	if (!names.includes(name)) names.push(name);
}

function inPlay(tree: Expression, parts: readonly Traceable[]): readonly Traceable[] {
	if (tree[0] === '&&' || tree[0] === '||') {
		const decides = tree[0] === '||';
		const deciding = parts.find(part => part.now() === decides);
		return deciding ? [deciding] : parts;
	}
	if (tree[0] === '?:') {
		const [test, yes, no] = parts as [Traceable, Traceable, Traceable];
		const outcome = test.now();
		if (outcome === undefined || outcome === null) return [test];
		return [test, outcome ? yes : no];
	}
	return parts;
}
