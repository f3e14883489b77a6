import type { Outcome } from '../expressions/tree.ts';
import { OutOfRange } from '../physics/range.ts';
import { readElsewhere } from './elsewhere.ts';
import type { Given, Graph, Node } from './graph.ts';
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
		return plain(computed(node, given.get(node.slot)?.value, inputs));
	} catch {
		return undefined;
	}
}

function computed(node: Node, answer: Given, inputs: Inputs): Outcome | Bounded {
	inputs.enter(node.slots);
	try {
		return settle(node.compute!(inputs, answer), inputs);
	} catch (error) {
		// A formula refuses the NaN that stands for something that does not apply here: then it does not apply either.
		return error instanceof OutOfRange && inputs.idle ? null : undefined;
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
