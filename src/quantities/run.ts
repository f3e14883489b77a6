import type { Outcome } from '../expressions/tree.ts';
import { OutOfRange } from '../physics/range.ts';
import { readElsewhere } from './elsewhere.ts';
import type { Graph } from './graph.ts';
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
	const inputs = new Inputs(values);
	for (const slot of order) {
		const node = graph.nodes[slot]!;
		if (node.limit) {
			const found = solveLimit(graph, values, given, node);
			values[slot] = found instanceof Bounded ? found.value : found;
			continue;
		}
		if (node.elsewhere) {
			values[slot] = readElsewhere(graph, values, given, node);
			continue;
		}
		inputs.enter(node.slots);
		let outcome: Outcome | Bounded;
		try {
			outcome = settle(node.compute!(inputs, given.get(slot)?.value), inputs);
		} catch (error) {
			if (!(error instanceof OutOfRange)) throw error;
			outcome = undefined;
		}
		values[slot] = outcome instanceof Bounded ? outcome.value : outcome;
	}
}

/** What a node's outcome comes to once it is clear that something it read was not known or not applicable. */
export function settle(outcome: Outcome | Bounded, inputs: Inputs): Outcome | Bounded {
	if (outcome === undefined || outcome === null) return inputs.idle && !inputs.lacks ? null : outcome;
	if (typeof outcome === 'number' && Number.isNaN(outcome)) {
		if (inputs.idle) return null;
		if (inputs.lacks) return undefined;
	}
	return inputs.lacks ? undefined : outcome;
}
