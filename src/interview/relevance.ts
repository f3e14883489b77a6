import type { Model } from '../audit/model.ts';
import { bind } from '../expressions/bind.ts';
import type { Outcome } from '../expressions/tree.ts';
import { evaluationOn, run } from '../graph/evaluation.ts';
import { type Graph, slotNamed, type Values } from '../graph/graph.ts';
import { reach } from '../graph/paths.ts';
import { givenAnswers } from '../quantities/from-sheet.ts';
import { isWanted, wantedBy } from '../quantities/wanted.ts';
import { isList, type Question } from '../sheet/question.ts';
import type { Sheet } from '../sheet/sheet.ts';

/** Which questions make sense on a sheet, and which of them the quick pass asks. */
export interface Relevance {
	inEffect(question: Question): boolean;
	quick(question: Question): boolean;
}

const answerOrders = new WeakMap<Graph, readonly number[]>();

/** The slots of the answers and of what they and their being asked need, in order; no quantity beyond that. */
function answerOrder({ graph, rulebook }: Model): readonly number[] {
	let order = answerOrders.get(graph);
	if (!order) {
		const answers = rulebook.questions.flatMap(question =>
			[question.id, ...wantedBy(question)].map(name => slotNamed(graph, name)),
		);
		const needed = reach(answers, slot => graph.feeds[slot]!);
		order = graph.order.filter(slot => needed.has(slot));
		answerOrders.set(graph, order);
	}
	return order;
}

/**
 * Works out what is in effect. An `ask when` that cannot be decided counts as true, for asking too much loses a minute and
 * asking too little loses a line of the audit.
 *
 * For the quick pass what is not known equals nothing, itself included, and holds nothing: two years of which one is not
 * known differ, a sensor not known is no three-wire one, a past not known has no overheating. Usual values do not count
 * there; only what was answered does.
 */
export function relevanceOf(model: Model, sheet: Sheet): Relevance {
	const { graph, rulebook } = model;
	const given = new Map(
		[...givenAnswers(sheet, rulebook.questions)].map(([id, answer]) => [graph.slotOf.get(id)!, answer]),
	);
	const values: Values = new Array(graph.nodes.length).fill(undefined);
	run(evaluationOn({ graph, values, given }), answerOrder(model));
	const lists = new Set(rulebook.questions.filter(({ kind }) => isList(kind)).map(({ id }) => id));
	const answered = (name: string): Outcome => {
		const slot = slotNamed(graph, name);
		const value = values[slot];
		if (value === null || (given.has(slot) && value !== undefined)) return value;
		return lists.has(name) ? [] : Number.NaN;
	};
	return {
		inEffect: kept(question => {
			const slot = slotNamed(graph, question.id);
			return values[slot] !== null && (given.has(slot) || isWanted(question, { graph, values }, lists));
		}),
		quick: kept(({ quick }) =>
			typeof quick === 'boolean' ? quick : bind(quick, name => () => answered(name))() === true,
		),
	};
}

/** What was found of a question is kept: a face asks for it many times at each key. */
function kept(find: (question: Question) => boolean): (question: Question) => boolean {
	const found = new Map<Question, boolean>();
	return question => {
		let is = found.get(question);
		if (is === undefined) {
			is = find(question);
			found.set(question, is);
		}
		return is;
	};
}
