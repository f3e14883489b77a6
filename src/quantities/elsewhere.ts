import type { Outcome } from '../expressions/tree.ts';
import type { Graph, Node } from './graph.ts';
import type { Values } from './inputs.ts';
import { type GivenAnswer, type Telling, tellReplaced, union } from './pass.ts';
import { between, slotNamed } from './replace.ts';
import { run } from './run.ts';

interface Parts {
	readonly of: number;
	/** Slot that is set, and the slot its value is taken from. */
	readonly set: readonly (readonly [number, number])[];
	readonly order: readonly number[];
}

/** The value of a quantity elsewhere, on the values at hand. */
export function readElsewhere(
	graph: Graph,
	values: Values,
	given: ReadonlyMap<number, GivenAnswer>,
	node: Node,
): Outcome {
	const { of, set, order } = parts(graph, node);
	for (const [, from] of set) if (values[from] === undefined || values[from] === null) return values[from];
	const kept = order.map(slot => values[slot]);
	const held = set.map(([slot]) => values[slot]);
	try {
		for (const [slot, from] of set) values[slot] = values[from];
		run(graph, values, given, order);
		return values[of];
	} finally {
		for (const [index, [slot]] of set.entries()) values[slot] = held[index];
		for (const [index, slot] of order.entries()) values[slot] = kept[index];
	}
}

/** The same, keeping what is missing and assumed. */
export function tellElsewhere(telling: Telling, node: Node): void {
	const { graph, values } = telling;
	const { of, set, order } = parts(graph, node);
	const sources = set.map(([, from]) => from);
	const idle = sources.some(slot => values[slot] === null);
	values[node.slot] = idle ? null : undefined;
	if (idle) return;
	telling.missing[node.slot] = union(sources.map(slot => telling.missing[slot]!));
	if (telling.missing[node.slot]!.length > 0) return;
	const at = tellReplaced(telling, new Map(set.map(([slot, from]) => [slot, values[from]])), order);
	values[node.slot] = at.values[of];
	telling.missing[node.slot] = at.missing[of]!;
	telling.assumed[node.slot] = union([at.assumed[of]!, ...sources.map(slot => telling.assumed[slot]!)]);
	const broken = at.broken.get(of);
	if (broken !== undefined) telling.broken.set(node.slot, broken);
}

const plans = new WeakMap<Node, Parts>();

function parts(graph: Graph, node: Node): Parts {
	const known = plans.get(node);
	if (known) return known;
	const { of, with: set } = node.elsewhere!;
	const slots = Object.entries(set).map(([to, from]) => [slotNamed(graph, to), slotNamed(graph, from)] as const);
	const target = slotNamed(graph, of);
	const found = {
		of: target,
		set: slots,
		order: between(
			graph,
			slots.map(([slot]) => slot),
			[target],
		),
	};
	plans.set(node, found);
	return found;
}
