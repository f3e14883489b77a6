import type { Model } from '../audit/model.ts';
import type { Question } from '../sheet/question.ts';
import { type Answer, answerTo, type Sheet } from '../sheet/sheet.ts';
import { type Effects, effectsOf } from './effects.ts';

export type Pass = 'quick' | 'full';

/** What the interview last said: what was read, what could not be, what an answer touched. */
export interface Said {
	readonly kind: 'read' | 'problem' | 'odd' | 'told';
	readonly text: string;
}

/** The interview at one moment. A face shows it; only `step` makes the next. */
export interface State {
	readonly model: Model;
	readonly sheet: Sheet;
	readonly effects: Effects;
	readonly pass: Pass;
	/** Only this section is asked; null: all of them. */
	readonly section: string | null;
	/** The question in sight; null when none is left: then the review. */
	readonly at: string | null;
	/** Questions seen before this one, for the way back. */
	readonly trail: readonly string[];
	/** Put off for this sitting. */
	readonly later: ReadonlySet<string>;
	/** An odd entry waiting to be entered once more. */
	readonly odd: { readonly id: string; readonly answer: Answer } | null;
	/** A question opened from the review goes back there. */
	readonly fromReview: boolean;
	readonly said: Said | null;
}

/** Opens the interview on a sheet: at its first open question. */
export function start(model: Model, sheet: Sheet, pass: Pass, section: string | null = null): State {
	const blank = { model, sheet, pass, section, trail: [], later: new Set<string>(), odd: null, fromReview: false };
	const state: State = { ...blank, effects: effectsOf(model, sheet), at: null, said: null };
	const done = answeredCount(state);
	const at = firstOpen(state);
	const said: Said | null = done > 0 ? { kind: 'told', text: `Going on, ${done} answered.` } : null;
	return { ...state, at, said };
}

/** Every question of this pass that makes sense now, in order. A section asked for by name is asked whole in a full pass. */
export function asked({ model, effects, pass, section }: State): Question[] {
	return model.rulebook.questions.filter(
		question =>
			(section === null || question.section === section) &&
			effects.inEffect(question) &&
			(pass === 'full' || effects.quick(question)),
	);
}

/** Whether a question has been dealt with: a value, or "not known". */
export const isAnswered = ({ sheet }: State, { id }: Question): boolean => answerTo(sheet, id) !== undefined;

export function questionAt({ model, at }: State): Question | null {
	return at === null ? null : (model.rulebook.questions.find(({ id }) => id === at) ?? null);
}

/** The first question that is neither answered nor put off. */
export function firstOpen(state: State): string | null {
	return asked(state).find(question => !isAnswered(state, question) && !state.later.has(question.id))?.id ?? null;
}

/** The next open one behind a question; then whatever was left open before it. */
export function nextOpen(state: State, from: string): string | null {
	const order = state.model.rulebook.questions.map(({ id }) => id);
	const place = order.indexOf(from);
	const open = asked(state).filter(question => !isAnswered(state, question) && !state.later.has(question.id));
	return (open.find(({ id }) => order.indexOf(id) > place) ?? open.find(({ id }) => id !== from))?.id ?? null;
}

/** Answers on the sheet that are in effect. */
export function answeredCount(state: State): number {
	return state.model.rulebook.questions.filter(
		question => isAnswered(state, question) && state.effects.inEffect(question),
	).length;
}

/** Where in the pass: how many of how many are dealt with. */
export function progress(state: State): { readonly done: number; readonly of: number } {
	const all = asked(state);
	return { done: all.filter(question => isAnswered(state, question)).length, of: all.length };
}

/** How many cylinders lists have: as answered, else the usual 8. */
export function cylindersOf({ sheet }: State): number {
	const value = answerTo(sheet, 'engine.cylinders')?.value;
	return typeof value === 'number' ? value : 8;
}
