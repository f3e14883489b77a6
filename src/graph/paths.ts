import type { Graph } from './graph.ts';

/** What was worked out of a graph: it does not change. */
interface Paths {
	readonly between: Map<string, readonly number[]>;
	readonly below: Map<string, ReadonlySet<number>>;
	readonly above: Map<string, ReadonlySet<number>>;
}

const known = new WeakMap<Graph, Paths>();

/** The slots that depend on one of `varied` and that one of `targets` depends on, in order, `varied` themselves left out. */
export function between(graph: Graph, varied: readonly number[], targets: readonly number[]): readonly number[] {
	let paths = known.get(graph);
	if (!paths) known.set(graph, (paths = { between: new Map(), below: new Map(), above: new Map() }));
	const [from, to] = [varied.join(), targets.join()];
	return kept(paths.between, `${from}>${to}`, () => {
		const below = kept(paths.below, from, () => movedBy(graph, varied));
		const above = kept(paths.above, to, () => reach(targets, slot => graph.feeds[slot]!));
		const [fewer, more] = below.size < above.size ? [below, above] : [above, below];
		const slots = [...fewer].filter(slot => more.has(slot) && !varied.includes(slot));
		return slots.sort((a, b) => graph.places[a]! - graph.places[b]!);
	});
}

function movedBy(graph: Graph, varied: readonly number[]): Set<number> {
	const ids = varied.map(slot => graph.nodes[slot]!.id);
	return reach(varied, slot => graph.readers[slot]!.filter(reader => !graph.nodes[reader]!.ignores?.(ids)));
}

function kept<Value>(by: Map<string, Value>, key: string, work: () => Value): Value {
	let value = by.get(key);
	if (value === undefined) by.set(key, (value = work()));
	return value;
}

/** Everything that can be reached from some slots, themselves included. */
export function reach(from: readonly number[], next: (slot: number) => readonly number[]): Set<number> {
	const found = new Set(from);
	const open = [...from];
	for (let slot = open.pop(); slot !== undefined; slot = open.pop()) {
		for (const other of next(slot)) {
			if (found.has(other)) continue;
			found.add(other);
			open.push(other);
		}
	}
	return found;
}

/**
 * The slots that a node moves with that evaluates `targets` anew with `varied` set: whatever goes into the nodes between
 * them from outside, and not the value that these have here.
 */
export function affecting(graph: Graph, varied: readonly number[], targets: readonly number[]): number[] {
	const within = between(graph, varied, targets);
	const into = within.flatMap(slot => graph.nodes[slot]!.affectedBy(graph, slot));
	return [...new Set([...into, ...targets])].filter(slot => !within.includes(slot) && !varied.includes(slot));
}
