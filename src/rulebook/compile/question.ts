import { logQuantities } from '../../log/all.ts';
import { type Access, accesses } from '../../sheet/access.ts';
import { type AnswerKind, type Effort, efforts, listKinds, type Question, type UnitSet } from '../../sheet/question.ts';
import { stages } from '../../sheet/stage.ts';
import { canonicalUnits, type Kind } from '../../units/kinds.ts';
import { unitNamed } from '../../units/names.ts';
import { readHowEach, readWordsOfChoices } from './choices.ts';
import { readConstant } from './constant.ts';
import { compileYesNo } from './expression.ts';
import { type Fields, quote } from './fields.ts';
import type { Names } from './names.ts';
import { readUsual } from './usual.ts';
import { printed, readPlain } from './words.ts';
import { readMinutes, type UsualWork } from './work.ts';

const numberKinds = Object.keys(canonicalUnits) as Kind[];
/** What an answer may be. */
export const answerKinds: readonly AnswerKind[] = [...numberKinds, 'whole', 'choice', ...listKinds, 'teeth'];
/** What finding out takes where a question does not say, min: common practice. */
const usualMinutes: Readonly<Record<Effort, number>> = { known: 1, paper: 5, look: 5, gauge: 15, test: 30 };
export const passes = ['quick', 'full'] as const;

/** A question read from its file, its expressions still to be compiled (they may name questions of other files). */
export interface QuestionDraft {
	readonly question: Question;
	readonly fields: Fields;
}

/** Whether a question's kind is one; else that is reported, and all that would be said of it besides would mislead. */
export const hasKind = (fields: Fields): boolean => fields.oneOf<string>('kind', answerKinds, '') !== '';

/** Reads one question; what is wrong with it goes into the file's problems. */
export function readQuestion(fields: Fields, section: string, topic: string, work: UsualWork): QuestionDraft {
	const id = fields.text('id');
	if (!/^[a-z]+\.[a-z0-9_]+$/.test(id))
		fields.report('id', `${quote(id)} is not an id: section.answer, small letters and _`);
	const kind = fields.oneOf('kind', answerKinds, 'choice');
	const of = readOf(fields, kind);
	const effort = fields.has('effort') ? fields.oneOf('effort', efforts, 'look') : 'look';
	const question: Question = {
		id,
		label: readLabel(fields, id),
		ask: printed(fields, 'ask'),
		how: printed(fields, 'how'),
		kind,
		of,
		unit: readUnits(fields, kind, of),
		...readWordsOfChoices(fields, kind),
		...readHowEach(fields, kind),
		...readRanges(fields, kind, of),
		takes: readTakes(fields),
		quick: fields.oneOf('pass', passes, 'full') === 'quick',
		askWhen: null,
		wantedWhen: null,
		usual: [],
		effort,
		minutes: fields.has('minutes') ? readMinutes(fields) : usualMinutes[effort],
		access: readAccess(fields, work),
		known_from: fields.has('known_from') ? fields.oneOf('known_from', stages, 'install') : null,
		follows: fields.has('follows') ? fields.text('follows') : null,
		target: readTarget(fields),
		logged: fields.has('logged') ? fields.text('logged') : null,
		cautions: fields.texts('cautions', false),
		section,
		topic,
	};
	checkLogged(question, fields);
	// Read by finishQuestion, but fields all the same.
	for (const key of ['quick_when', 'ask_when', 'wanted_when', 'usual']) fields.has(key);
	fields.refuseRest();
	return { question, fields };
}

function readTarget(fields: Fields): boolean {
	if (!fields.has('target')) return false;
	if (fields.data('target') !== true) fields.report('target', 'target: found something else; accepted: true');
	return true;
}

/** Compiles what a question says about when it is asked and what is usual, once every name is known. */
export function finishQuestion(
	{ question, fields }: QuestionDraft,
	names: Names,
	cautions: ReadonlySet<string>,
): Question {
	for (const id of question.cautions)
		if (!cautions.has(id)) fields.report('cautions', `${quote(id)} is not in rules/cautions.yaml`);
	const { follows } = question;
	if (follows !== null && !names.has(follows)) fields.report('follows', `follows: ${quote(follows)} is no question`);
	const at = question.takes?.at;
	const density = typeof at === 'string' ? names.get(at) : undefined;
	if (typeof at === 'string' && !(density?.is === 'number' && density.kind === 'density'))
		fields.report('takes', `takes: ${quote(at)} is no density`);
	return {
		...question,
		quick: question.quick || (compileYesNo(fields, 'quick_when', names) ?? false),
		askWhen: compileYesNo(fields, 'ask_when', names),
		wantedWhen: compileYesNo(fields, 'wanted_when', names),
		usual: readUsual(fields, question, names),
	};
}

/** A log's quantity settles an answer of its own kind; one figure a pull needs to say which pull counts. */
function checkLogged({ logged, kind }: Question, fields: Fields): void {
	if (logged === null) return;
	const quantity = logQuantities.find(({ id }) => id === logged);
	if (!quantity) fields.report('logged', `${quote(logged)} is no quantity of a log`);
	else if (quantity.kind !== (kind === 'choice' ? 'words' : kind))
		fields.report('logged', `logged: ${logged} is a ${quantity.kind}, and the answer a ${kind}`);
	else if (quantity.logged === 'pull' && quantity.worst === undefined)
		fields.report('logged', `logged: ${logged} is one figure a pull, and does not say which is the worst`);
}

function readAccess(fields: Fields, { access, pack }: UsualWork): Access {
	if (fields.has('access')) return fields.oneOf('access', accesses, 'bay');
	if (access === null && !pack)
		fields.reportStart(`access: say where this is found out, here or at the head of the file: ${accesses.join(', ')}`);
	return access ?? 'bay';
}

function isKind(word: string): word is Kind {
	return Object.hasOwn(canonicalUnits, word);
}

function readOf(fields: Fields, kind: AnswerKind): readonly Kind[] {
	if (kind === 'curve' || kind === 'per-cylinder') {
		const want = kind === 'curve' ? 2 : 1;
		const of = fields.texts('of').filter(isKind);
		if (of.length !== want) fields.report('of', `of: ${want === 2 ? 'two kinds are' : 'a kind is'} needed here`);
		return of;
	}
	if (kind === 'loads') return ['current'];
	return isKind(kind) ? [kind] : [];
}

function readUnits(fields: Fields, kind: AnswerKind, of: readonly Kind[]): Record<UnitSet, readonly string[]> {
	if (kind === 'loads') return { us: ['A'], metric: ['A'] };
	if (of.length === 0) return { us: [], metric: [] };
	const inner = fields.isMapping('unit') ? fields.inner('unit') : null;
	const read = (set: UnitSet): string[] => {
		const words = inner ? inner.texts(set) : fields.texts('unit');
		if (words.length !== of.length) fields.report('unit', `unit: ${of.length} needed for ${set}`);
		return words.flatMap((word, index) => {
			const unit = unitNamed(word, of[index] ? [of[index]] : undefined);
			if (!unit) fields.report('unit', `${quote(word)} is no unit of ${of[index] ?? kind}`);
			return unit ? [unit.symbol] : [];
		});
	};
	const us = read('us');
	const units = { us, metric: inner ? read('metric') : us };
	inner?.refuseRest();
	return units;
}

/** A pack's question without a label goes by its id. */
function readLabel(fields: Fields, id: string): string {
	if (fields.has('label')) return readPlain(fields, 'label');
	fields.advise('label', 'label: a short name for lists and panels is needed here');
	return id.slice(id.indexOf('.') + 1).replaceAll('_', ' ');
}

/** The ranges of a number: every question for one number has both, the plausible one inside the hard one. */
function readRanges(fields: Fields, kind: AnswerKind, of: readonly Kind[]): Pick<Question, 'plausible' | 'hard'> {
	const own: readonly Kind[] = kind === 'whole' ? ['count'] : of.length === 1 ? of : [];
	const plausible = readRange(fields, 'plausible', own);
	const hard = readRange(fields, 'hard', own);
	if (plausible && hard && (plausible[0] < hard[0] || plausible[1] > hard[1]))
		fields.report('plausible', 'plausible: it reaches beyond hard, which refuses what lies outside');
	return { plausible, hard };
}

function readRange(fields: Fields, key: 'plausible' | 'hard', kinds: readonly Kind[]): [number, number] | null {
	const placed = fields.placedList(key, kinds.length > 0);
	if (placed.length === 0) return null;
	const [low, high] = placed.map(place => readConstant(fields.source, place, kinds));
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
