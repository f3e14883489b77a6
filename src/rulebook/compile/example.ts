import type { Value } from '../../expressions/tree.ts';
import { perPull } from '../../log/quantities.ts';
import type { AnyQuantity } from '../../quantities/quantity.ts';
import { checkAnswer, type Found } from '../../sheet/check-answer.ts';
import { plugProblems } from '../../sheet/check-plugs.ts';
import type { PlugHalf } from '../../sheet/plugs.ts';
import type { Question } from '../../sheet/question.ts';
import { type Answer, usualCylinders } from '../../sheet/sheet.ts';
import type { Kind } from '../../units/kinds.ts';
import type { Each, Example, VerdictWord } from '../rulebook.ts';
import { readConstant } from './constant.ts';
import { type Fields, quote } from './fields.ts';

/** What an example may set. */
export interface ExampleNames {
	readonly questions: ReadonlyMap<string, Question>;
	readonly quantities: ReadonlyMap<string, AnyQuantity>;
	readonly builds: ReadonlySet<string>;
}

/** What an example may come out as. */
export const outcomes: readonly VerdictWord[] = ['fails', 'holds', 'cannot-tell', 'does-not-apply'];

/** Reads the examples of a rule. */
export function readExamples(fields: Fields, each: Each | null, known: ExampleNames): Example[] {
	return fields.innerList('examples').map(inner => readExample(inner, each, known));
}

function readExample(fields: Fields, each: Each | null, known: ExampleNames): Example {
	const given = fields.inner('given', false);
	const answers: Record<string, unknown> = {};
	const quantities: Record<string, Value> = {};
	let plugs: readonly PlugHalf[] | null = null;
	for (const id of given?.keys() ?? []) {
		const question = known.questions.get(id);
		const quantity = known.quantities.get(id);
		if (id === 'plugs') plugs = readExamplePlugs(given!);
		else if (question) answers[id] = readAnswer(given!, id, question);
		else if (quantity) quantities[id] = readQuantity(given!, id, quantity);
		else given!.reportName(id, `${quote(id)} is no answer and no quantity`);
	}
	const on = fields.text('on');
	if (!known.builds.has(on))
		fields.report('on', `${quote(on)} is no build of rules/examples: ${[...known.builds].join(', ')}`);
	const example: Example = {
		on,
		answers,
		quantities,
		...(plugs ? { plugs } : {}),
		without: readAnswerIds(fields, 'without', known),
		item: fields.has('item') ? fields.text('item') : null,
		then: fields.oneOf('then', outcomes, 'holds'),
		missing: fields.has('missing') ? readAnswerIds(fields, 'missing', known).sort() : null,
		at: fields.source.place(fields.offset),
	};
	if (example.missing && example.then !== 'cannot-tell')
		fields.report('missing', 'missing: it goes with then: cannot-tell');
	checkItem(fields, example, each);
	fields.refuseRest();
	return example;
}

/** Halves of plugs, checked as a sheet's are. */
function readExamplePlugs(given: Fields): readonly PlugHalf[] {
	const plugs = given.data('plugs');
	for (const { path, found, accepted } of plugProblems(plugs))
		given.report('plugs', `${path}: found ${found}; accepted: ${accepted}`);
	return plugs as readonly PlugHalf[];
}

function readAnswerIds(fields: Fields, key: 'without' | 'missing', known: ExampleNames): string[] {
	const ids = fields.texts(key, false);
	for (const id of ids) if (!known.questions.has(id)) fields.report(key, `${key}: ${quote(id)} is no answer`);
	return ids;
}

/** With `each` an example says which part it is about, unless the whole list is not known or not in effect. */
function checkItem(fields: Fields, { item, then, without }: Example, each: Each | null): void {
	if (each?.over === 'pulls') return;
	if (!each) {
		if (item !== null) fields.report('item', 'item: this rule is on the build as a whole, it has no each');
		return;
	}
	const whole = then === 'does-not-apply' || (then === 'cannot-tell' && without.includes(each.answer));
	// A plug as a whole, or a pin: which one is plain where there is one finding.
	if (each.over === 'plugs') return;
	if (item === null && !whole) fields.report('item', `item: which part of ${each.answer} is this example about?`);
	if (item !== null && each.subjects && !each.subjects.includes(item))
		fields.report('item', `${quote(item)} is none of the parts that this rule speaks of: ${each.subjects.join(', ')}`);
}

/** An answer as written in an example or a named build, in the sheet's own shape and checked as a sheet's is; lists are for the usual count of cylinders. */
export function readAnswer(fields: Fields, id: string, question: Question): unknown {
	const answer = answerAsWritten(fields, id, question);
	const found: Found = { problems: [], warnings: [] };
	if (answer) checkAnswer(question, answer, usualCylinders, found);
	for (const problem of found.problems)
		fields.report(id, `${problem.path}: found ${problem.found}; accepted: ${problem.accepted}`);
	return answer;
}

function answerAsWritten(fields: Fields, id: string, question: Question): Answer | null {
	const data = fields.data(id);
	if (fields.isMapping(id)) return { known: 'measured', ...(data as Answer) };
	if (question.of.length !== 1 || question.kind !== question.of[0]) return { value: data };
	const placed = fields.placed(id);
	const kinds = [question.of[0], ...(question.takes ? [question.takes.kind] : [])];
	const constant = placed && readConstant(fields.source, placed, kinds);
	return constant && { value: constant.typed, unit: constant.unit.symbol, known: 'measured' };
}

/** A quantity set outright, in its canonical unit. */
function readQuantity(fields: Fields, id: string, { kind }: AnyQuantity): Value {
	if (!perPull.has(id)) return readFigure(fields, id, kind);
	// Of pulls a list, one figure a pull; a figure by itself is that of the only one.
	const data = fields.data(id);
	if (!Array.isArray(data)) return [readFigure(fields, id, kind)];
	return data.map(text => {
		if (typeof text === 'boolean') return text;
		const constant = readConstant(fields.source, { text: String(text), offset: fields.offset }, [kind as Kind]);
		return constant?.value ?? 0;
	});
}

function readFigure(fields: Fields, id: string, kind: AnyQuantity['kind']): Value {
	const data = fields.data(id);
	const refuse = (wanted: string) => {
		fields.report(id, `${id}: ${wanted} is needed here`);
		return 0;
	};
	switch (kind) {
		case 'hidden':
			return refuse('something else: this quantity cannot be set, set what it is made from');
		case 'yes-no':
			return typeof data === 'boolean' ? data : refuse('true or false');
		case 'list':
			return Array.isArray(data) ? data : refuse('a list');
		case 'words':
			return typeof data === 'string' ? data : refuse('a text');
		default: {
			const placed = fields.placed(id);
			return (placed && readConstant(fields.source, placed, [kind])?.value) ?? 0;
		}
	}
}
