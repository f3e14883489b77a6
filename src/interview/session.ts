import type { Model } from '../audit/model.ts';
import { isObject } from '../sheet/fault.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { open } from './queue.ts';
import { answeredCount, blank, type Pass, questionNamed, type State } from './state.ts';

/** Opens the interview on a sheet: at its first open question. */
export function start(model: Model, sheet: Sheet, pass: Pass, section: string | null = null): State {
	const state = blank(model, sheet, pass, section);
	const done = answeredCount(state);
	const said = done > 0 ? ({ kind: 'told', text: `Going on, ${done} answered.` } as const) : null;
	return { ...state, at: open(state)[0]?.id ?? null, said };
}

/** What a session leaves in the sheet beside the answers, so that the next one begins where it ended. */
interface Draft {
	/** The question in sight and what was typed at it. */
	readonly id?: string;
	readonly text?: string;
	readonly later?: readonly string[];
	readonly recheck?: { readonly todo: readonly string[]; readonly of: number };
	readonly since?: number;
}

/** The sheet to save on leaving, with the place and the half-typed text in it where a new start would not find them. */
export function leave(state: State, text: string): Sheet {
	const { draft: _old, ...bare } = state.sheet;
	const sheet = bare as Sheet;
	const { at, later, recheck, since } = state;
	const again = start(state.model, sheet, state.pass, state.section);
	const draft: Draft = {
		...(at !== null && (at !== again.at || text !== '') ? { id: at, text } : {}),
		...(later.size > 0 ? { later: [...later] } : {}),
		...(recheck ? { recheck } : {}),
		...(recheck && since !== null ? { since } : {}),
	};
	return Object.keys(draft).length > 0 ? { ...sheet, draft } : sheet;
}

/** The interview as it was left, and the text that was half typed. A draft that a hand has spoilt is passed over. */
export function resume(
	model: Model,
	sheet: Sheet,
	pass: Pass,
	section: string | null = null,
): { readonly state: State; readonly text: string } {
	const { draft, ...bare } = sheet;
	const state = start(model, bare as Sheet, pass, section);
	const known = (id: unknown): id is string => typeof id === 'string' && questionNamed(state, id) !== null;
	const { id, text, later, recheck, since } = (isObject(draft) ? draft : {}) as Record<string, unknown>;
	const put = { ...state, later: new Set(listIn(later).filter(known)) };
	const todo = isObject(recheck) ? listIn(recheck.todo).filter(known) : [];
	const of = isObject(recheck) && Number.isInteger(recheck.of) ? Math.max(todo.length, recheck.of as number) : 0;
	const went: State = {
		...put,
		recheck: todo.length > 0 ? { todo, of } : null,
		since: todo.length > 0 && Number.isInteger(since) && sheet.audits[(since as number) - 1] ? (since as number) : null,
	};
	const at = known(id) ? id : (open(went)[0]?.id ?? null);
	return { state: { ...went, at }, text: known(id) && typeof text === 'string' ? text : '' };
}

const listIn = (value: unknown): unknown[] => (Array.isArray(value) ? value : []);
