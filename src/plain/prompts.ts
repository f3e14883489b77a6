import { noneRow, rowMarks } from '../interview/entry/choice.ts';
import { formWords, unitWords } from '../interview/entry/form.ts';
import { aboutWords, progress, roundLeft } from '../interview/queue.ts';
import type { State } from '../interview/state.ts';
import { answeredInTopic } from '../interview/topic.ts';
import type { Question, UnitSet } from '../sheet/question.ts';
import { answerTo } from '../sheet/sheet.ts';
import { textIn } from '../sheet/text.ts';
import { wrap } from '../text/wrap.ts';
import { formatAnswer } from '../wording/format.ts';

/** What stands before a question when its topic begins: section and topic, and what the topic knows already. */
export function topicLines(state: State, question: Question, width: number): string[] {
	const { done, of } = progress(state);
	const section = state.model.rulebook.sections.find(({ id }) => id === question.section)?.title ?? question.section;
	const left = roundLeft(state);
	const counted = left ? [`(${done} of ${of},`, aboutWords(left.seconds), 'left)'] : [`(${done} of ${of})`];
	const known = answeredInTopic(state, question);
	return [
		'',
		...wrap(`-- ${section}: ${question.topic} ${counted.map(inOnePiece).join(' ')}`, width).map(asTyped),
		...(known.length > 0 ? wrap(`So far: ${known.join('; ')}.`, width, '  ') : []),
	];
}

/** A count is not parted where the line is short. */
const inOnePiece = (words: string): string => words.replaceAll(' ', '\u00a0');
const asTyped = (line: string): string => line.replaceAll('\u00a0', ' ');

/** The question itself. Its first line begins with the id in brackets. */
export function promptLines(state: State, question: Question, width: number): string[] {
	const answer = answerTo(state.sheet, question.id);
	const before =
		answer === undefined
			? ''
			: ` (now: ${answer.value === undefined ? 'not known' : formatAnswer(question, answer, state.sheet.units)})`;
	const lines = wrap(
		`[${question.id}] ${textIn(question.ask, state.sheet.units)}${before}${expects(question, state.sheet.units)}`,
		width,
		'  ',
	);
	const marks = rowMarks(question);
	const none = noneRow(question);
	const choices = Object.entries(question.choices).map(
		([id, words], index) =>
			`  ${marks[index]} ${id}${words.toLowerCase() === id.replaceAll('-', ' ') ? '' : `: ${words}`}`,
	);
	if (none !== null) choices.push(`  ${marks.at(-1)} ${none}`);
	return [
		...lines,
		...choices.flatMap(choice =>
			wrap(choice, width, '    ').map((line, index) => (index === 0 ? `  ${line.trim()}` : line)),
		),
	];
}

/** How to write the answer, in a few words. */
function expects(question: Question, units: UnitSet): string {
	const unit = unitWords(question, units);
	switch (question.kind) {
		case 'choice':
			return ' - one of:';
		case 'several':
			return ' - those that apply, with commas, or none:';
		case 'whole':
			return ' - a whole number';
		default: {
			const form = formWords(question, units);
			if (form !== null) return ` - ${form}`;
			if (unit === ':1') return ' - so many to 1';
			return unit ? ` - a number (${unit})` : ' - a bare number';
		}
	}
}
