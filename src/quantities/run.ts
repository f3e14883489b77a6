import type { Outcome } from '../expressions/tree.ts';
import { readElsewhere } from './elsewhere.ts';
import type { Graph, Node } from './graph.ts';
import { Inputs, type Values } from './inputs.ts';
import { solveLimit } from './limit.ts';
import type { GivenAnswer } from './pass.ts';
import { Bounded } from './quantity.ts';

/** Computes the slots named, in order, values only. For replaced inputs, roots and draws. */
export function run(
	graph: Graph,
	values: Values,
	given: ReadonlyMap<number, GivenAnswer>,
	order: readonly number[],
): void {
	const inputs = new Inputs(graph.slotOf, values);
	for (const slot of order) values[slot] = valueIn(graph, values, given, graph.nodes[slot]!, inputs);
}

/** The value of one node on the values at hand; not known where its formula refuses, or breaks. */
export function valueIn(
	graph: Graph,
	values: Values,
	given: ReadonlyMap<number, GivenAnswer>,
	node: Node,
	inputs: Inputs,
): Outcome {
	try {
		if (node.elsewhere) return readElsewhere(graph, values, given, node);
		if (node.limit) return plain(solveLimit(graph, values, given, node));
		inputs.enter(node.slots);
		return plain(settle(node.compute!(inputs, given.get(node.slot)?.value), inputs));
	} catch {
		return undefined;
	}
}

const plain = (outcome: Outcome | Bounded): Outcome => (outcome instanceof Bounded ? outcome.value : outcome);

/** What a node's outcome comes to once it is clear that something it read was not known or not applicable. */
export function settle(outcome: Outcome | Bounded, inputs: Inputs): Outcome | Bounded {
	if (outcome === undefined || outcome === null) return inputs.idle && !inputs.lacks ? null : outcome;
	if (typeof outcome === 'number' && Number.isNaN(outcome)) {
		if (inputs.idle) return null;
		if (inputs.lacks) return undefined;
	}
	return inputs.lacks ? undefined : outcome;
}
