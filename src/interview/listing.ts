import type { Question } from '../sheet/question.ts';
import { answerTo } from '../sheet/sheet.ts';
import { textIn } from '../sheet/text.ts';
import { formatAnswer } from '../wording/format.ts';
import type { State } from './state.ts';

/** Which questions a list of them shows. */
export const shows = ['all', 'answered', 'open', 'not known'] as const;
export type Show = (typeof shows)[number];

/** A question in a list of them: its number in the rulebook's order, and how it stands. */
export interface Listed {
	readonly question: Question;
	readonly number: number;
	/** The answer; or that there is none, or that it does not count. */
	readonly words: string;
}

/**
 * The questions that make sense on this build, and whatever else is answered. `text` is a number or an id, which is that one; or
 * words, each the beginning of one in the question's names, section or wording.
 */
export function listing(state: State, show: Show, text: string): readonly Listed[] {
	const key = `${show} ${text}`;
	const before = listed.get(state);
	if (before?.key === key) return before.rows;
	const rows = listedAnew(state, show, text);
	listed.set(state, { key, rows });
	return rows;
}

/** A list is looked at many times for one key. */
const listed = new WeakMap<State, { readonly key: string; readonly rows: readonly Listed[] }>();

function listedAnew(state: State, show: Show, text: string): Listed[] {
	const named = state.model.rulebook.questions.some(({ id }) => id === text.trim());
	const wanted = named ? [text.trim()] : plain(text).split(' ').filter(Boolean);
	return state.model.rulebook.questions.flatMap((question, at) => {
		const answer = answerTo(state.sheet, question.id);
		const inEffect = state.relevance.inEffect(question);
		const standing: Show = answer === undefined ? 'open' : answer.value === undefined ? 'not known' : 'answered';
		if (!(inEffect || answer) || !(show === 'all' || show === standing)) return [];
		if (!matches(state, question, at + 1, wanted)) return [];
		const value = answer?.value === undefined ? null : formatAnswer(question, answer, state.sheet.units);
		const words = value ?? (standing === 'open' && state.later.has(question.id) ? 'left for later' : standing);
		return [{ question, number: at + 1, words: inEffect ? words : `${words} (not in effect)` }];
	});
}

function matches(state: State, question: Question, number: number, wanted: readonly string[]): boolean {
	if (wanted.length === 0) return true;
	if (wanted.length === 1 && /^\d+$/.test(wanted[0]!)) return number === Number(wanted[0]);
	if (wanted[0] === question.id) return true;
	const section = state.model.rulebook.sections.find(({ id }) => id === question.section)?.title ?? '';
	const words = ` ${plain(`${question.id} ${question.label} ${section} ${textIn(question.ask, state.sheet.units)}`)}`;
	return wanted.every(word => words.includes(` ${word}`));
}

/** Small letters and figures with single spaces between. */
const plain = (text: string): string =>
	text
		.toLowerCase()
		.replace(/[^a-z0-9]+/g, ' ')
		.trim();
