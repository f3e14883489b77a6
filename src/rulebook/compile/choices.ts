import type { AnswerKind, Question } from '../../sheet/question.ts';
import { type Fields, quote } from './fields.ts';
import { printed, readPlain } from './words.ts';

/** The choices, how they read inside a sentence, and whether the question was one for a single choice before. */
export function readWordsOfChoices(fields: Fields, kind: AnswerKind): Pick<Question, 'choices' | 'said' | 'wasChoice'> {
	if (kind !== 'choice' && kind !== 'several') return { choices: {}, said: null, wasChoice: false };
	const choices = readChoices(fields);
	const wasChoice = fields.has('was') && fields.oneOf('was', ['choice'] as const, 'choice') === 'choice';
	if (wasChoice && kind === 'choice') fields.report('was', 'was: only a question for several was one for a choice');
	return { choices, said: readSaid(fields, choices), wasChoice };
}

/** How each choice of several is found out: all of them say it, or none. */
export function readHowEach(fields: Fields, kind: AnswerKind): Pick<Question, 'howEach'> {
	const inner = fields.inner('how_each', false);
	if (!inner) return {};
	if (kind !== 'several') fields.report('how_each', 'how_each: only a question for several has it');
	const choices = fields.inner('choices', false)?.keys() ?? [];
	const strange = inner.keys().filter(id => !choices.includes(id));
	for (const id of strange) inner.reportName(id, `${quote(id)} is not one of the choices`);
	const howEach = Object.fromEntries(choices.map(id => [id, printed(inner, id)]));
	return { howEach };
}

/** `said: same` where every choice reads inside a sentence as in the list, else the words of those that do not. */
function readSaid(fields: Fields, choices: Question['choices']): Question['said'] {
	if (!fields.has('said')) return null;
	if (!fields.isMapping('said')) {
		if (fields.text('said') !== 'same') fields.report('said', 'said: same, or a mapping of choices (id: words)');
		return choices;
	}
	const inner = fields.inner('said')!;
	const own = inner.keys().map(key => {
		if (!Object.hasOwn(choices, key)) inner.reportName(key, `${quote(key)} is not one of the choices`);
		return [key, readPlain(inner, key)] as const;
	});
	return { ...choices, ...Object.fromEntries(own) };
}

function readChoices(fields: Fields): Record<string, string> {
	const inner = fields.inner('choices');
	const choices: Record<string, string> = {};
	for (const key of inner?.keys() ?? []) {
		if (/^[a-z0-9]+([.-][a-z0-9]+)*$/.test(key)) choices[key] = readPlain(inner!, key);
		else inner!.reportName(key, `${quote(key)} is no choice's id: small letters, digits and hyphens`);
	}
	if (inner && inner.keys().length < 2) fields.report('choices', 'two choices or more are needed');
	return choices;
}
