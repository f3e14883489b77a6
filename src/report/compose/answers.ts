import type { Assessment } from '../../audit/assess.ts';
import { valueIn } from '../../graph/solve.ts';
import { noteOn } from '../../sheet/notes.ts';
import type { Question, UnitSet } from '../../sheet/question.ts';
import { type Answer, answerTo } from '../../sheet/sheet.ts';
import { formatAnswer } from '../../wording/format.ts';
import { type Block, code, heading, type Inline, listed } from '../document.ts';

/** The answers as given, with how they are known, notes, and what is not in effect. */
export function answers({ model, sheet, state, wording }: Assessment): Block[] {
	const items = model.rulebook.questions.flatMap((question): Inline[][] => {
		const answer = answerTo(sheet, question.id);
		const waiting = answer ? '' : noteOn(sheet, question.id);
		if (waiting) return [[code(question.id), ` no answer yet. Note: ${waiting}`]];
		if (!answer) return [];
		const idle = valueIn(state, question.id) === null;
		const note = answer.note ? ` Note: ${answer.note}` : '';
		return [
			[
				code(question.id),
				` ${answerWords(question, answer, wording.units)}${idle ? ', not in effect here' : ''}.${note}`,
			],
		];
	});
	return listed([heading(2, 'The answers as given')], items, 'small');
}

/** An answer, how it is known, and how far off it may be when it says so. */
function answerWords(question: Question, answer: Answer, units: UnitSet): string {
	if (answer.value === undefined) return 'not known';
	const spread = answer.spread === undefined ? [] : [`give or take ${answer.spread}`];
	const known = question.of.length > 0 ? [answer.known ?? 'estimate', ...spread] : [];
	return `${formatAnswer(question, answer, units)}${known.length > 0 ? ` (${known.join(', ')})` : ''}`;
}
