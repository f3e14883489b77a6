import type { Expression } from '../../expressions/tree.ts';
import type { AnswerKind, Effort, Question, UnitSet, UsualCase } from '../../sheet/question.ts';
import { type Kind, kept } from '../../units/kinds.ts';
import { unitNamed } from '../../units/names.ts';
import { readConstant, readSpread } from './constant.ts';
import { compileExpression } from './expression.ts';
import { type Fields, quote } from './fields.ts';
import type { Names } from './names.ts';

const listKinds = ['per-cylinder', 'firing-order', 'pairs', 'curve', 'loads', 'codes', 'circuits', 'teeth'] as const;
const kinds = [...(Object.keys(kept) as Kind[]), 'whole', 'choice', 'several', ...listKinds] as const;
const efforts: readonly Effort[] = ['look', 'gauge', 'test'];

/** A question read from its file, its expressions still to be compiled (they may name questions of other files). */
export interface QuestionDraft {
	readonly question: Question;
	readonly fields: Fields;
}

/** Reads one question; what is wrong with it goes into the file's problems. */
export function readQuestion(fields: Fields, section: string, topic: string): QuestionDraft {
	const id = fields.text('id');
	if (!/^[a-z]+\.[a-z0-9_]+$/.test(id))
		fields.report('id', `${quote(id)} is not an id: section.answer, small letters and _`);
	const kind: AnswerKind = fields.oneOf('kind', kinds, 'choice');
	const of = readOf(fields, kind);
	const unit = readUnits(fields, kind, of);
	const choices = kind === 'choice' || kind === 'several' ? readChoices(fields) : {};
	const single = of.length === 1 ? of[0]! : null;
	const question: Question = {
		id,
		ask: fields.text('ask'),
		how: fields.text('how'),
		kind,
		of,
		unit,
		choices,
		plausible: readRange(fields, 'plausible', single, of.length > 0),
		hard: readRange(fields, 'hard', single, of.length > 0),
		takes: readTakes(fields),
		quick: fields.oneOf('pass', ['quick', 'full'], 'full') === 'quick',
		askWhen: null,
		usual: [],
		effort: fields.has('effort') ? fields.oneOf('effort', efforts, 'look') : 'look',
		cautions: fields.texts('cautions', false),
		section,
		topic,
	};
	for (const key of ['quick_when', 'ask_when', 'usual']) fields.has(key);
	fields.refuseRest();
	return { question, fields };
}

/** Compiles what a question says about when it is asked and what is usual, once every name is known. */
export function finishQuestion({ question, fields }: QuestionDraft, names: Names): Question {
	const expression = (key: string): Expression | null => {
		const placed = fields.placed(key, false);
		const compiled = placed && compileExpression(fields.source, placed, names);
		if (compiled && compiled.type.is !== 'yes-no') fields.report(key, `${key}: a yes or no is needed here`);
		return compiled?.tree ?? null;
	};
	return {
		...question,
		quick: question.quick || (expression('quick_when') ?? false),
		askWhen: expression('ask_when'),
		usual: readUsual(fields, question, names),
	};
}

function readOf(fields: Fields, kind: AnswerKind): readonly Kind[] {
	if (kind === 'curve' || kind === 'per-cylinder') {
		const want = kind === 'curve' ? 2 : 1;
		const of = fields.texts('of').filter((word): word is Kind => word in kept);
		if (of.length !== want) fields.report('of', `of: ${want === 2 ? 'two kinds are' : 'a kind is'} needed here`);
		return of;
	}
	if (kind === 'loads') return ['current'];
	return kind in kept ? [kind as Kind] : [];
}

function readUnits(fields: Fields, kind: AnswerKind, of: readonly Kind[]): Record<UnitSet, readonly string[]> {
	if (kind === 'loads') return { us: ['A'], metric: ['A'] };
	if (of.length === 0) return { us: [], metric: [] };
	const data = fields.data('unit');
	const inner = data !== null && typeof data === 'object' && !Array.isArray(data) ? fields.inner('unit') : null;
	const read = (set: UnitSet): string[] => {
		const words = inner ? inner.texts(set) : fields.texts('unit');
		if (words.length !== of.length) fields.report('unit', `unit: ${of.length} needed for ${set}`);
		return words.flatMap((word, index) => {
			const unit = unitNamed(word, of[index] ? [of[index]] : undefined);
			if (!unit) fields.report('unit', `${quote(word)} is no unit of ${of[index] ?? kind}`);
			return unit ? [unit.symbol] : [];
		});
	};
	return { us: read('us'), metric: read('metric') };
}

function readChoices(fields: Fields): Record<string, string> {
	const inner = fields.inner('choices');
	const choices: Record<string, string> = {};
	for (const key of inner?.keys() ?? []) choices[key] = inner!.text(key);
	if (inner && Object.keys(choices).length < 2) fields.report('choices', 'two choices or more are needed');
	return choices;
}

function readRange(
	fields: Fields,
	key: 'plausible' | 'hard',
	kind: Kind | null,
	numeric: boolean,
): [number, number] | null {
	const whole = fields.data('kind') === 'whole';
	const placed = fields.placedList(key, (numeric && kind !== null) || whole);
	if (placed.length === 0) return null;
	const [low, high] = placed.map(place => readConstant(fields.source, place, whole ? ['count'] : kind && [kind]));
	if (placed.length !== 2 || !low || !high || !(low.value < high.value)) {
		fields.report(key, `${key}: two rising numbers with their units are needed`);
		return null;
	}
	return [low.value, high.value];
}

function readTakes(fields: Fields): Question['takes'] {
	const inner = fields.inner('takes', false);
	if (!inner) return null;
	const kind = inner.oneOf('kind', ['mass-flow', 'volume-flow'] as const, 'mass-flow');
	const at = inner.placed('at');
	inner.refuseRest();
	if (!at) return null;
	return { kind, at: /^[\d.]/.test(at.text) ? (readConstant(fields.source, at, ['density'])?.value ?? 0) : at.text };
}

function readUsual(fields: Fields, question: Question, names: Names): UsualCase[] {
	if (!fields.has('usual')) return [];
	const cases = fields.isList('usual')
		? fields.innerList('usual')
		: [fields.inner('usual')].filter(inner => inner !== null);
	return cases.flatMap(inner => readCase(inner, question, names));
}

/** One usual value: also how a pack's prefill is written. */
export function readCase(inner: Fields, question: Question, names: Names, from?: string): UsualCase[] {
	const whenAt = inner.placed('when', false);
	const when = whenAt && compileExpression(inner.source, whenAt, names);
	const value = readUsualValue(inner, question, names);
	const spread = inner.has('spread')
		? readSpread(inner.source, inner.placed('spread')!, question.of[0] ?? 'count')
		: { by: 0, relative: false };
	inner.has('answer');
	inner.refuseRest();
	if (!value) return [];
	return [{ ...(when ? { when: when.tree } : {}), value, spread, ...(from ? { from } : {}) }];
}

function readUsualValue(inner: Fields, question: Question, names: Names): Expression | null {
	const placed = inner.placed('value');
	if (!placed) return null;
	if (question.kind === 'choice') {
		if (!(placed.text in question.choices)) {
			inner.report(
				'value',
				`${quote(placed.text)} is not one of the choices ${Object.keys(question.choices).join(', ')}`,
			);
		}
		return ['value', placed.text];
	}
	const kind = question.kind === 'whole' ? 'count' : question.of[0];
	if (!kind || question.of.length > 1) {
		inner.report('value', `a usual value makes no sense for ${question.kind}`);
		return null;
	}
	if (/^[-+]?[\d.]+(\s*[^\s*\d+/-]+(\s+[a-z]+)?)?$/i.test(placed.text)) {
		const constant = readConstant(inner.source, placed, [kind]);
		return constant && ['value', constant.value];
	}
	const compiled = compileExpression(inner.source, placed, names);
	if (!compiled) return null;
	const fits =
		compiled.type.is === 'number' &&
		(compiled.type.kind === kind || (kind === 'count' && compiled.type.kind === 'ratio'));
	if (!fits) inner.report('value', `a ${kind} is needed here`);
	return compiled.tree;
}
