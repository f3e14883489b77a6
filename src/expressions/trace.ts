import { type Bound, bind, type Reader } from './bind.ts';
import { type Expression, type Outcome, operands } from './tree.ts';

/** Which names an undecided expression waits for, and which names it read on its way to an outcome. */
export interface Trace {
	readonly blocking: string[];
	readonly read: string[];
}

/** A trace in which nothing is noted yet. */
export const emptyNotes = (): Trace => ({ blocking: [], read: [] });

/** Evaluates an expression as `bind` has it, noting what it rests on. */
export type Traced = (into: Trace) => Outcome;

/**
 * Binds an expression so that evaluating it notes the way that it went: operands that a known part made idle are left out, and
 * nothing that does not apply here waits for anything. Only for what is traced: in draws `bind` alone is enough.
 */
export function traced(tree: Expression, reader: Reader): Traced {
	const at = { notes: emptyNotes() };
	const now = noting(tree, reader, at);
	return into => {
		at.notes = into;
		return now();
	};
}

/** Where the notes go at the time. */
interface Notebook {
	notes: Trace;
}

function noting(tree: Expression, reader: Reader, at: Notebook): Bound {
	if (tree[0] === 'value' || tree[0] === 'list') return bind(tree, reader);
	if (tree[0] === 'name') return notingName(tree[1], reader, at);
	let [reads, blocks] = [0, 0];
	const [first] = operands(tree);
	const inside = (part: Expression): Bound => {
		const value = noting(part, reader, at);
		if (tree[0] !== '&&' && tree[0] !== '||') return value;
		const decides = tree[0] === '||';
		if (part === first) return value;
		return () => {
			const outcome = value();
			return outcome === decides ? alone(value) : outcome;
		};
	};
	/** What decides by itself rests on nothing that stands before it. */
	const alone = (value: Bound): Outcome => {
		shorten(at.notes.read, reads);
		shorten(at.notes.blocking, blocks);
		return value();
	};
	const now = bind(tree, reader, inside);
	if (isOnOneName(tree)) return now;
	return () => {
		const { read, blocking } = at.notes;
		reads = read.length;
		blocks = blocking.length;
		const outcome = now();
		if (outcome === null) shorten(blocking, blocks);
		return outcome;
	};
}

/** One name and constants, as most comparisons: where such a part does not apply, it has waited for nothing that is to be taken back. */
function isOnOneName(tree: Expression): boolean {
	const open = operands(tree).filter(part => part[0] !== 'value' && part[0] !== 'list');
	return open.length === 1 && open[0]![0] === 'name' && tree[0] !== '&&' && tree[0] !== '||';
}

function notingName(name: string, reader: Reader, at: Notebook): Bound {
	const now = reader(name);
	return () => {
		const value = now();
		note(name, at.notes.read);
		if (value === undefined) note(name, at.notes.blocking);
		return value;
	};
}

/** Mostly it is that short already, and to look is much quicker than to set it. */
function shorten(names: string[], length: number): void {
	if (names.length > length) names.length = length;
}

/** Once each: an expression has a handful of names, and a list of them costs less than a set. */
function note(name: string, names: string[]): void {
	if (!names.includes(name)) names.push(name);
}
