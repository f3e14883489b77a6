import type { Model } from '../audit/model.ts';
import { isObject } from '../sheet/fault.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { typable } from '../text/sanitize.ts';
import { joinedPieces } from './entry/one-by-one.ts';
import { aboutWords, asked, open, roundLeft } from './queue.ts';
import {
	answeredCount,
	blank,
	countWords,
	isAnswered,
	type Pass,
	questionAt,
	questionNamed,
	type State,
} from './state.ts';

/** Opens the interview on a sheet: at its first open question. */
export function start(model: Model, sheet: Sheet, pass: Pass, section: string | null = null): State {
	const state = blank(model, sheet, pass, section);
	const done = answeredCount(state);
	const left = roundLeft(state);
	const words =
		done > 0
			? `Going on, ${countWords(state)}.`
			: left
				? `A first round of what you know, have on paper or see: ${aboutWords(left.seconds)} at most. Then one with the gauge in hand.`
				: null;
	const said = words === null ? null : ({ kind: 'notice', text: words } as const);
	return { ...state, at: open(state)[0]?.id ?? null, said };
}

/** What a session leaves in the sheet beside the answers, so that the next one begins where it ended. */
interface Draft {
	/** The pass under way; not kept when it is the full one, with which any start begins. */
	readonly pass?: Pass;
	/** The question in sight and what was typed at it. */
	readonly id?: string;
	readonly text?: string;
	readonly later?: readonly string[];
	readonly recheck?: { readonly todo: readonly string[]; readonly of: number };
	readonly since?: number;
}

/** What is typed of the answer in sight: the pieces that stand, and the line. */
export function halfTyped(state: State, line: string): string {
	const question = questionAt(state);
	return question && state.begun.length > 0 ? joinedPieces(question, [...state.begun, line]) : line;
}

/** The sheet to save, with the place and the half-typed text in it where a new start would not find them. */
export function leave(state: State, typed: string): Sheet {
	const { draft: _old, ...bare } = state.sheet;
	const sheet = bare as Sheet;
	const { at, later, recheck, since, aside } = state;
	const half = halfTyped(state, typed);
	const whole = { ...state, section: null, recheck: null };
	const pass =
		state.passAfter ??
		(at === null && asked(whole).every(question => isAnswered(state, question)) ? 'full' : state.pass);
	const first = open({ ...whole, later: new Set(), pass })[0]?.id ?? null;
	const place =
		half === '' && aside && aside.id !== at
			? aside
			: at !== null && (at !== first || half !== '')
				? { id: at, text: half }
				: {};
	const draft: Draft = {
		...(pass === 'quick' ? { pass } : {}),
		...place,
		...(later.size > 0 ? { later: [...later] } : {}),
		...(recheck ? { recheck } : {}),
		...(recheck && since !== null ? { since } : {}),
	};
	return Object.keys(draft).length > 0 ? { ...sheet, draft } : sheet;
}

/**
 * The interview as it was left, and the text that was half typed. A draft that a hand has spoilt is passed over.
 *
 * @param pass null: the one that was under way, else the full one; a section asked for by name is asked whole
 */
export function resume(
	model: Model,
	sheet: Sheet,
	pass: Pass | null,
	section: string | null = null,
): { readonly state: State; readonly text: string } {
	const { draft, ...bare } = sheet;
	const { id, text, later, recheck, since, pass: left } = (isObject(draft) ? draft : {}) as Record<string, unknown>;
	const underWay: Pass = left === 'quick' ? 'quick' : 'full';
	const state = start(model, bare as Sheet, pass ?? (section === null ? underWay : 'full'), section);
	const known = (name: unknown): name is string => typeof name === 'string' && questionNamed(state, name) !== null;
	const todo = isObject(recheck) ? listIn(recheck.todo).filter(known) : [];
	const of = isObject(recheck) && Number.isInteger(recheck.of) ? Math.max(todo.length, recheck.of as number) : 0;
	const half = typeof text === 'string' ? typable(text) : '';
	const went: State = {
		...state,
		later: new Set(listIn(later).filter(known)),
		recheck: section === null && todo.length > 0 ? { todo, of } : null,
		since: todo.length > 0 && Number.isInteger(since) && sheet.audits[(since as number) - 1] ? (since as number) : null,
		passAfter: section === null ? null : underWay,
	};
	// A place outside what is asked now is no place to begin; what was typed there waits for whoever comes by.
	const asLeft = section === null && (pass === null || pass === underWay);
	const inside = known(id) && (asLeft || went.recheck !== null || asked(went).some(question => question.id === id));
	if (inside) return { state: { ...went, at: id }, text: half };
	const aside = known(id) && half !== '' ? { id, text: half } : null;
	return { state: { ...went, at: open(went)[0]?.id ?? null, aside }, text: '' };
}

const listIn = (value: unknown): unknown[] => (Array.isArray(value) ? value : []);
