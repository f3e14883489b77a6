import { namesIn } from '../../expressions/tree.ts';
import type { Graph } from '../../graph/graph.ts';
import { readByLogs } from '../../log/car.ts';
import { controllerPlace } from '../../plugs/circuit.ts';
import { modelGraph } from '../../quantities/model-graph.ts';
import type { AnyQuantity } from '../../quantities/quantity.ts';
import type { Question } from '../../sheet/question.ts';
import { namesRead } from '../reads.ts';
import type { Rulebook } from '../rulebook.ts';
import { type Fields, quote } from './fields.ts';
import type { QuestionDraft } from './question.ts';

// What can only be known once every file has been read: whether the files agree with each other and with the quantities.

/** Notes a question whose id is taken, by a quantity or by a question before it. */
export function refuseDoubles(
	drafts: readonly QuestionDraft[],
	quantities: readonly AnyQuantity[],
	before: readonly Question[] = [],
): void {
	const seen = new Map(quantities.map(({ id }) => [id, 'a quantity']));
	for (const { id } of before) seen.set(id, 'a question');
	for (const { question, fields } of drafts) {
		const other = seen.get(question.id);
		if (other) fields.report('id', `${quote(question.id)} is already ${other}: take another id`);
		seen.set(question.id, `asked at ${fields.source.place(fields.offset)}`);
	}
}

/**
 * The graph that the questions and quantities make, or null after noting why there is none: a circle of usual values
 * and conditions, or a quantity that reads an answer nobody is asked for.
 */
export function graphOf(
	questions: readonly Question[],
	quantities: readonly AnyQuantity[],
	drafts: readonly QuestionDraft[],
	otherwise: Fields,
): Graph | null {
	try {
		return modelGraph(questions, quantities);
	} catch (error) {
		if (!(error instanceof TypeError)) throw error;
		const named = new Set(error.message.split(/[\s,]+/));
		const guilty = drafts.find(({ question }) => named.has(question.id))?.fields;
		if (guilty) guilty.report(guilty.has('ask_when') ? 'ask_when' : 'usual', error.message);
		else otherwise.reportStart(error.message);
		return null;
	}
}

/** Notes every question that decides nothing: neither a rule nor a quantity reads it, nor the asking of another one. */
export function refuseUnread(
	drafts: readonly QuestionDraft[],
	graph: Graph,
	{ rules, procedures, vocabulary }: Pick<Rulebook, 'rules' | 'procedures' | 'vocabulary'>,
): void {
	const read = new Set<string>();
	for (const node of graph.nodes) for (const id of node.dependencies) read.add(id);
	for (const rule of rules) for (const id of namesRead(rule)) read.add(id);
	for (const { steps } of procedures)
		for (const { applies, only_when } of steps)
			for (const asked of [applies, only_when]) if (asked) namesIn(asked, read);
	for (const { required } of vocabulary.circuits) if (required) namesIn(required, read);
	read.add(controllerPlace);
	for (const id of readByLogs) read.add(id);
	for (const { question, fields } of drafts) {
		if (!read.has(question.id))
			fields.report(
				'id',
				`no rule and no quantity reads ${question.id}: add the rule it is asked for, or take it away`,
			);
	}
}
