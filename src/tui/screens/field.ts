import { readEntry } from '../../interview/entry/entry.ts';
import type { Way } from '../../interview/entry/outcome.ts';
import { cylindersOf, questionAt } from '../../interview/state.ts';
import type { Question } from '../../sheet/question.ts';
import { answerTo } from '../../sheet/sheet.ts';
import { formatAnswer } from '../../wording/format.ts';
import type { App } from '../app.ts';
import { textOf } from '../line-editor.ts';
import { clip, type Line, line, lines } from '../text.ts';
import { bankLines } from './cylinders.ts';

/** Whether the question in sight is answered from a list. */
export const hasList = ({ interview, taking }: App): boolean => {
	const question = interview && questionAt(interview);
	return taking === 'answer' && (question?.kind === 'choice' || question?.kind === 'several');
};
/** The two readings of what was typed, when only the person can tell which is meant. */
export const waysOf = ({ interview, taking }: App): readonly Way[] =>
	taking === 'answer' && interview?.doubt?.is === 'two-ways' ? interview.doubt.ways : [];
/** The field, with what stands above it and what is read from it beneath. */
export function fieldLines(app: App, question: Question, width: number): Line[] {
	if (app.taking === 'note') return [line(clip(`Note: ${withCaret(app)}`, width), 'field')];
	if (hasList(app) && app.field.characters.length === 0) return [];
	const unit = question.unit[app.interview!.sheet.units][0];
	const shown = unit === undefined || unit === '1' ? '' : ` (${unit})`;
	const known = app.known ? `, ${app.known}` : '';
	const now = answerTo(app.interview!.sheet, question.id);
	const before = now
		? `Now: ${now.value === undefined ? 'not known' : formatAnswer(question, now, app.interview!.sheet.units)}`
		: '';
	const tail = withCaret(app);
	const room = Math.max(8, width - shown.length - known.length - 12);
	const field = line(
		`Answer${shown}: ${tail.length > room ? `..${tail.slice(tail.length - room)}` : tail}${known}`,
		'field',
	);
	return [
		...(before ? [line(clip(before, width), 'quiet')] : []),
		...(question.kind === 'per-cylinder' && app.open !== 'how'
			? bankLines(textOf(app.field), app.interview!.sheet, width)
			: []),
		field,
		...(waysOf(app).length > 0 ? [] : echo(app, question, width)),
	];
}

/** What is typed, read as it stands, in both unit sets. */
function echo(app: App, question: Question, width: number): Line[] {
	const text = textOf(app.field);
	if (text.trim() === '' || question.of.length === 0) return [];
	const entry = readEntry(question, text, app.interview!.sheet.units, cylindersOf(app.interview!.sheet));
	if (entry.is === 'problem') return [line('not read yet', 'quiet')];
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
