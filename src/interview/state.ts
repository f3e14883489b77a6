import type { Model } from '../audit/model.ts';
import type { Question } from '../sheet/question.ts';
import { type Answer, answerTo, type Sheet, usualCylinders } from '../sheet/sheet.ts';
import type { Way } from './entry/outcome.ts';
import { type Relevance, relevanceOf } from './relevance.ts';

export type Pass = 'quick' | 'full';

/** What the interview last said: what was read, what could not be, what an answer touched. */
export interface Said {
	readonly kind: 'read' | 'problem' | 'odd' | 'notice';
	readonly text: string;
}

/** What an entry left open: an odd one waits to be entered once more, one that reads two ways for the person to say which. */
export type Doubt =
	| { readonly is: 'odd'; readonly id: string; readonly answer: Answer }
	| { readonly is: 'two-ways'; readonly ways: readonly [Way, Way] }
	/** What was typed cannot be; entered once more, or nothing typed, it is taken as `way`. */
	| { readonly is: 'offer'; readonly id: string; readonly typed: string; readonly way: Way };

/** A recheck under way: what is to be asked yet, in this order, of how many. */
export interface Recheck {
	readonly todo: readonly string[];
	readonly of: number;
}

/** The interview at one moment. A face shows it; only `step` makes the next. */
export interface State {
	readonly model: Model;
	readonly sheet: Sheet;
	readonly relevance: Relevance;
	readonly pass: Pass;
	/** Only this section is asked; null: all of them. */
	readonly section: string | null;
	/** The question in sight; null when none is left: then the review. */
	readonly at: string | null;
	/** Questions seen before this one, for the way back. */
	readonly trail: readonly string[];
	/** Put off for this session. */
	readonly later: ReadonlySet<string>;
	readonly doubt: Doubt | null;
	/** A question opened from the review goes back there. */
	readonly fromReview: boolean;
	/** Null: the questions are asked in their order. */
	readonly recheck: Recheck | null;
	/** Of the audits in the sheet the one that this session's are compared with, counted from 1; null: with none. */
	readonly since: number | null;
	readonly said: Said | null;
	/** The pieces of a list that is typed one by one, at the question in sight. */
	readonly begun: readonly string[];
	/** Half-typed text of another question than the one in sight, found again on going there. */
	readonly aside: { readonly id: string; readonly text: string } | null;
	/** The pass to go on with another day, where this session is of one section alone. */
	readonly passAfter: Pass | null;
}

/** An interview on a sheet, with nothing in sight yet. */
export function blank(model: Model, sheet: Sheet, pass: Pass, section: string | null): State {
	return {
		model,
		sheet,
		relevance: relevanceOf(model, sheet),
		pass,
		section,
		at: null,
		trail: [],
		later: new Set(),
		doubt: null,
		fromReview: false,
		recheck: null,
		since: null,
		said: null,
		begun: [],
		aside: null,
		passAfter: null,
	};
}

/** The question of an id; null: there is none. */
export function questionNamed({ model }: State, id: string): Question | null {
	return model.rulebook.questions.find(question => question.id === id) ?? null;
}

/** The question that is asked now; null: none. */
export function questionAt(state: State): Question | null {
	return state.at === null ? null : questionNamed(state, state.at);
}

/** Whether a question has been dealt with: a value, or "not known". */
export const isAnswered = ({ sheet }: State, { id }: Question): boolean => answerTo(sheet, id) !== undefined;

/** Answers on the sheet that are in effect. */
export function answeredCount(state: State): number {
	return state.model.rulebook.questions.filter(
		question => isAnswered(state, question) && state.relevance.inEffect(question),
	).length;
}

/** How far a sheet is, in words: what has a value and what is open, not known among it. */
export function countWords(state: State): string {
	const inEffect = state.model.rulebook.questions.filter(state.relevance.inEffect);
	const dealt = inEffect.filter(question => isAnswered(state, question));
	const known = dealt.filter(({ id }) => answerTo(state.sheet, id)?.value !== undefined).length;
	const open = dealt.length - known;
	return open > 0 ? `${known} answered, ${open} not known` : `${known} answered`;
}

/** How many cylinders lists have: as answered, else the usual. */
export function cylindersOf(sheet: Sheet): number {
	const value = answerTo(sheet, 'engine.cylinders')?.value;
	return typeof value === 'number' ? value : usualCylinders;
}
