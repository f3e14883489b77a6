import type { Model } from '../audit/model.ts';
import { bind } from '../expressions/bind.ts';
import type { Outcome } from '../expressions/tree.ts';
import { givenAnswers } from '../quantities/given.ts';
import type { Graph } from '../quantities/graph.ts';
import type { Values } from '../quantities/inputs.ts';
import { reach } from '../quantities/replace.ts';
import { run } from '../quantities/run.ts';
import { isList, type Question } from '../sheet/question.ts';
import type { Sheet } from '../sheet/sheet.ts';

/** Which questions make sense on a sheet, and which of them the quick pass asks. */
export interface Relevance {
	inEffect(question: Question): boolean;
	quick(question: Question): boolean;
}

const answerOrders = new WeakMap<Graph, readonly number[]>();

/** The slots of the answers and of what they need, in order; no quantity beyond that. */
function answerOrder(graph: Graph): readonly number[] {
	let order = answerOrders.get(graph);
	if (!order) {
		const answers = graph.nodes.filter(({ question }) => question).map(({ slot }) => slot);
		const needed = reach(answers, slot => graph.feeds[slot]!);
		order = graph.order.filter(slot => needed.has(slot));
		answerOrders.set(graph, order);
	}
	return order;
}

/**
 * Works out what is in effect. An `ask when` that cannot be told counts as true, for asking too much loses a minute and
 * asking too little loses a line of the audit.
 *
 * For the quick pass what is not known equals nothing, itself included, and holds nothing: two years of which one is not
 * known differ, a sensor not known is no three-wire one, a past not known has no overheating. Usual values do not count
 * there; only what was answered does.
 */
export function relevanceOf({ graph, rulebook }: Model, sheet: Sheet): Relevance {
	const given = new Map(
		[...givenAnswers(sheet, rulebook.questions)].map(([id, answer]) => [graph.slotOf.get(id)!, answer]),
	);
	const values: Values = new Array(graph.nodes.length).fill(undefined);
	run(graph, values, given, answerOrder(graph));
	const answered = (slot: number): Outcome => {
		const value = values[slot];
		if (value === null || (given.has(slot) && value !== undefined)) return value;
		const { question } = graph.nodes[slot]!;
		return question && isList(question.kind) ? [] : Number.NaN;
	};
	return {
		inEffect: ({ id }) => values[graph.slotOf.get(id)!] !== null,
		quick: ({ quick }) =>
			typeof quick === 'boolean' ? quick : bind(quick, name => () => answered(graph.slotOf.get(name)!))() === true,
	};
}
