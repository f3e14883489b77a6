import { conditionOn } from '../audit/conditions.ts';
import type { Model } from '../audit/model.ts';
import { givenAnswers } from '../quantities/given.ts';
import type { Graph } from '../quantities/graph.ts';
import type { Values } from '../quantities/inputs.ts';
import { run } from '../quantities/pass.ts';
import { reach } from '../quantities/replace.ts';
import type { Question } from '../sheet/question.ts';
import type { Sheet } from '../sheet/sheet.ts';

/** Which questions make sense on a sheet, and which of them the quick pass asks. */
export interface Effects {
	inEffect(question: Question): boolean;
	quick(question: Question): boolean;
}

const answerOrders = new WeakMap<Graph, readonly number[]>();

/** The slots of the answers and of what they need, in order; no quantity beyond that. */
function answerOrder(graph: Graph): readonly number[] {
	let order = answerOrders.get(graph);
	if (!order) {
		const answers = graph.nodes.filter(({ question }) => question).map(({ slot }) => slot);
		const needed = reach(answers, slot => Object.values(graph.nodes[slot]!.slots));
		order = graph.order.filter(slot => needed.has(slot));
		answerOrders.set(graph, order);
	}
	return order;
}

/**
 * Works out what is in effect. A condition that cannot be told counts as true, for asking too much loses a minute and
 * asking too little loses a line of the audit.
 */
export function effectsOf({ graph, rulebook }: Model, sheet: Sheet): Effects {
	const given = new Map(
		[...givenAnswers(sheet, rulebook.questions)].map(([id, answer]) => [graph.slotOf.get(id)!, answer]),
	);
	const values: Values = new Array(graph.nodes.length).fill(undefined);
	run(graph, values, given, answerOrder(graph));
	const answered = values.map((value, slot) => (given.has(slot) || value === null ? value : undefined));
	return {
		inEffect: ({ id }) => values[graph.slotOf.get(id)!] !== null,
		quick: ({ quick }) => {
			if (typeof quick === 'boolean') return quick;
			const outcome = conditionOn(graph, answered, quick);
			return outcome !== false && outcome !== null;
		},
	};
}
