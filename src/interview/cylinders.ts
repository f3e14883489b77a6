import { checkAnswer } from '../sheet/check-answer.ts';
import type { SheetProblem } from '../sheet/problem.ts';
import type { Question } from '../sheet/question.ts';
import { answerTo, type Sheet, withAnswer } from '../sheet/sheet.ts';
import { formatAnswer } from '../wording/format.ts';
import { cylindersOf } from './state.ts';

/**
 * After another number of cylinders: lists of the old length would make the sheet one that cannot be read. They become
 * not known, with what they were in a note, so that no reading is lost.
 */
export function misfits(
	questions: readonly Question[],
	sheet: Sheet,
): { readonly sheet: Sheet; readonly message: string } {
	const cylinders = cylindersOf(sheet);
	const wrong = questions.filter(question => {
		const answer = answerTo(sheet, question.id);
		const problems: SheetProblem[] = [];
		if (answer) checkAnswer(question, answer, cylinders, { problems, warnings: [] });
		return problems.length > 0;
	});
	if (wrong.length === 0) return { sheet, message: '' };
	const fitting = wrong.reduce((now, question) => {
		const answer = answerTo(now, question.id)!;
		const was = `before: ${formatAnswer(question, answer, now.units)}`;
		return withAnswer(now, question.id, { known: 'not-known', note: [answer.note, was].filter(Boolean).join('; ') });
	}, sheet);
	const names = wrong.map(({ id }) => id).join(', ');
	return { sheet: fitting, message: `Not for ${cylinders} cylinders, so not known now (kept as a note): ${names}.` };
}
