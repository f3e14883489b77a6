import type { Assessment } from '../../audit/assess.ts';
import { showAnswer } from '../../audit/show.ts';
import { answerTo } from '../../sheet/sheet.ts';
import { type Block, code, heading, type Inline } from '../document.ts';

/** The answers as given, with how they are known, notes, and what is not in effect. */
export function answers({ model, sheet, state, wording }: Assessment): Block[] {
	const items = model.rulebook.questions.flatMap((question): Inline[][] => {
		const answer = answerTo(sheet, question.id);
		if (!answer) return [];
		const idle = state.values[state.graph.slotOf.get(question.id)!] === null;
		const told = answer.value === undefined ? 'not known' : showAnswer(question, answer, wording.units);
		const known = answer.value !== undefined && question.of.length > 0 ? ` (${answer.known ?? 'estimate'})` : '';
		const note = answer.note ? ` Note: ${answer.note}` : '';
		return [[code(question.id), ` ${told}${known}${idle ? ', not in effect' : ''}.${note}`]];
	});
	return items.length > 0 ? [heading(2, 'The answers as given'), { is: 'items', items }] : [];
}
