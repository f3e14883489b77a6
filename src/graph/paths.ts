import type { Graph } from './graph.ts';

const plans = new WeakMap<Graph, Map<string, readonly number[]>>();

/** The slots that depend on one of `varied` and that one of `targets` depends on, in order, `varied` themselves left out. */
export function between(graph: Graph, varied: readonly number[], targets: readonly number[]): readonly number[] {
	let known = plans.get(graph);
	if (!known) plans.set(graph, (known = new Map()));
	const key = `${varied.join()}>${targets.join()}`;
	let plan = known.get(key);
	if (!plan) {
		const ids = varied.map(slot => graph.nodes[slot]!.id);
		const below = reach(varied, slot => graph.readers[slot]!.filter(reader => !graph.nodes[reader]!.ignores?.(ids)));
		const above = reach(targets, slot => graph.feeds[slot]!);
		plan = graph.order.filter(slot => below.has(slot) && above.has(slot) && !varied.includes(slot));
		known.set(key, plan);
	}
	return plan;
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
