import { readEntry } from '../../interview/entry/entry.ts';
import { unitWords } from '../../interview/entry/form.ts';
import { joinedPieces } from '../../interview/entry/one-by-one.ts';
import type { Way } from '../../interview/entry/outcome.ts';
import { halfTyped } from '../../interview/session.ts';
import { cylindersOf, questionAt } from '../../interview/state.ts';
import { isList, type Question } from '../../sheet/question.ts';
import { answerTo } from '../../sheet/sheet.ts';
import { formatAnswer } from '../../wording/format.ts';
import type { App } from '../app.ts';
import { textOf } from '../line-editor.ts';
import { clip, joined, type Line, line, lines } from '../text.ts';
import { bankLines } from './cylinders.ts';

/** Whether the question in sight is answered from a list. */
export const hasList = ({ interview, taking }: App): boolean => {
	const question = interview && questionAt(interview);
	return taking === 'answer' && (question?.kind === 'choice' || question?.kind === 'several');
};
/** The two readings of what was typed, when only the person knows which is meant. */
export const waysOf = ({ interview, taking }: App): readonly Way[] =>
	taking === 'answer' && interview?.doubt?.is === 'two-ways' ? interview.doubt.ways : [];
/** The field, with what stands above it and what is read from it beneath. */
export function fieldLines(app: App, question: Question, width: number): Line[] {
	if (app.taking === 'note') return [line(clip(`Note: ${withCaret(app)}`, width), 'field')];
	if (hasList(app) && app.field.characters.length === 0) return [];
	const state = app.interview!;
	const { units } = state.sheet;
	const unit = unitWords(question, units);
	const known = app.known ? `, ${app.known}` : '';
	const now = answerTo(state.sheet, question.id);
	const before = now ? `Now: ${now.value === undefined ? 'not known' : formatAnswer(question, now, units)}` : '';
	const said = `Answer${unit === '' ? '' : ` (${unit})`}: `;
	return [
		...(before ? [line(clip(before, width), 'quiet')] : []),
		...begunLines(app, question, width),
		joined(
			{ text: said, look: 'plain' },
			{ text: endOf(withCaret(app), Math.max(8, width - said.length - known.length - 1)) + known, look: 'field' },
		),
		...(waysOf(app).length > 0 ? [] : echo(app, question, width)),
	];
}

/** The pieces of a list that stand already; readings at their cylinders. */
function begunLines(app: App, question: Question, width: number): Line[] {
	const state = app.interview!;
	if (question.kind === 'per-cylinder')
		return app.open === 'how' ? [] : bankLines(halfTyped(state, textOf(app.field)), state.sheet, width);
	return state.begun.length > 0 ? [line(clip(`So far: ${joinedPieces(question, state.begun)}`, width), 'quiet')] : [];
}

/** The end of a text that is longer than its room. */
const endOf = (text: string, room: number): string =>
	text.length > room ? `..${text.slice(text.length - room + 2)}` : text;

/** What is typed, read as it stands, in both unit sets. */
function echo(app: App, question: Question, width: number): Line[] {
	const text = textOf(app.field);
	if (text.trim() === '' || question.of.length === 0) return [];
	const { begun, sheet } = app.interview!;
	const whole = joinedPieces(question, [...begun, text]);
	const entry = readEntry(question, whole, sheet.units, cylindersOf(sheet));
	if (entry.is === 'problem') return isList(question.kind) ? [] : [line('not read yet', 'quiet')];
	if (entry.is === 'offer') return lines(`${entry.way.echo}? Enter asks`, width, 'odd').slice(0, 1);
	if (entry.is === 'two-ways')
		return lines(`reads two ways: ${entry.ways.map(({ echo }) => echo).join(', or ')}`, width, 'odd').slice(0, 2);
	return lines(
		`read as ${entry.echo}${entry.is === 'odd' ? ' (odd)' : ''}`,
		width,
		entry.is === 'odd' ? 'odd' : 'quiet',
	).slice(0, 2);
}

/** The field's text with the caret in it; line breaks of a paste as `;`. */
function withCaret({ field }: App): string {
	const shown = field.characters.map(character => (character === '\n' ? '; ' : character === '\t' ? ' ' : character));
	return `${shown.slice(0, field.caret).join('')}_${shown.slice(field.caret).join('')}`;
}
