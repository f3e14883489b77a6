import type { Assessment } from '../../audit/assess.ts';
import { valueIn } from '../../graph/solve.ts';
import { noteOn } from '../../sheet/notes.ts';
import type { Question, UnitSet } from '../../sheet/question.ts';
import { type Answer, answerTo } from '../../sheet/sheet.ts';
import { formatAnswer } from '../../wording/format.ts';
import { code, type Inline, listSection, type Section } from '../document.ts';

/** The answers as given, with how they are known, notes, and what is not in effect. */
export function answers(assessment: Assessment): Section | null {
	const { model, sheet } = assessment;
	const given = model.rulebook.questions.filter(({ id }) => answerTo(sheet, id) || noteOn(sheet, id));
	return listSection('The answers as given', given, question => line(question, assessment));
}

function line(question: Question, { sheet, state, wording }: Assessment): Inline[] {
	const answer = answerTo(sheet, question.id);
	if (!answer) return [code(question.id), ` no answer yet. Note: ${noteOn(sheet, question.id)}`];
	const idle = valueIn(state, question.id) === null;
	const note = answer.note ? ` Note: ${answer.note}` : '';
	return [
		code(question.id),
		` ${answerWords(question, answer, wording.units)}${idle ? ', not in effect here' : ''}.${note}`,
	];
}

/** An answer, how it is known, and how far off it may be when it says so. */
function answerWords(question: Question, answer: Answer, units: UnitSet): string {
	if (answer.value === undefined) return 'not known';
	const spread = answer.spread === undefined ? [] : [`give or take ${answer.spread}`];
	const known = question.of.length > 0 ? [answer.known ?? 'estimate', ...spread] : [];
	return `${formatAnswer(question, answer, units)}${known.length > 0 ? ` (${known.join(', ')})` : ''}`;
}
