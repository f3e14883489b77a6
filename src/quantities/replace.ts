import type { Outcome } from '../expressions/tree.ts';
import type { Graph } from './graph.ts';
import type { Values } from './inputs.ts';
import type { GivenAnswer } from './pass.ts';
import { run } from './run.ts';

/** What a replaced evaluation starts from: a solved graph, or a draw of one. */
export interface Base {
	readonly graph: Graph;
	readonly values: Values;
	readonly given: ReadonlyMap<number, GivenAnswer>;
	readonly replaced?: ReadonlySet<number>;
}

/** The values of some nodes with others replaced: the one call behind limits, charts, what-if and the next measurement. */
export function evaluate(
	base: Base,
	targets: readonly string[],
	replaced: Readonly<Record<string, Outcome>>,
): readonly Outcome[] {
	const { graph } = base;
	const slots = targets.map(id => slotNamed(graph, id));
	const varied = Object.keys(replaced).map(id => slotNamed(graph, id));
	const values = base.values.slice();
	for (const [index, id] of Object.keys(replaced).entries()) values[varied[index]!] = replaced[id];
	const order = between(graph, varied, slots);
	run(graph, values, base.given, base.replaced?.size ? order.filter(slot => !base.replaced!.has(slot)) : order);
	return slots.map(slot => values[slot]);
}

/** The slot of an id; a TypeError when there is none. */
export function slotNamed(graph: Graph, id: string): number {
	const slot = graph.slotOf.get(id);
	if (slot === undefined) throw new TypeError(`${id} is no answer and no quantity`);
	return slot;
}

const plans = new WeakMap<Graph, Map<string, readonly number[]>>();

/** The slots that depend on one of `varied` and that one of `targets` depends on, in order, `varied` themselves left out. */
export function between(graph: Graph, varied: readonly number[], targets: readonly number[]): readonly number[] {
	let known = plans.get(graph);
	if (!known) plans.set(graph, (known = new Map()));
	const key = `${varied.join()}>${targets.join()}`;
	let plan = known.get(key);
	if (!plan) {
		const below = reach(varied, slot => graph.readers[slot]!.filter(reader => !settled(graph, reader, varied)));
		const above = reach(targets, slot => graph.feeds[slot]!);
		plan = graph.order.filter(slot => below.has(slot) && above.has(slot) && !varied.includes(slot));
		known.set(key, plan);
	}
	return plan;
}

/** A quantity elsewhere does not feel the answers that it sets itself. */
function settled(graph: Graph, slot: number, varied: readonly number[]): boolean {
	const set = graph.nodes[slot]!.elsewhere?.with;
	return set !== undefined && varied.every(other => graph.nodes[other]!.id in set);
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
