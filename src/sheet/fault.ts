import type { Unit } from '../units/unit.ts';
import { shown } from './problem.ts';
import type { Question } from './question.ts';

/** What a value is checked with: its question, its units, the engine's count of cylinders. */
export interface Context {
	readonly question: Question;
	readonly units: readonly (Unit | undefined)[];
	readonly cylinders: number;
}

/** What is wrong with a value, and what is taken; null when nothing is. `soft` is outside the plausible range only. */
export type Fault = { readonly found: string; readonly accepted: string; readonly soft?: boolean } | null;

/** A fault, with what was found made fit to print. */
export const faultOf = (found: unknown, accepted: string): Fault => ({ found: shown(found), accepted });

/** A JSON number; `1e999` reads as infinity and is none. */
export const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

/** A JSON object: no list, no null. */
export const isObject = (value: unknown): value is Record<string, unknown> =>
	value !== null && typeof value === 'object' && !Array.isArray(value);

/** The most points, rows or codes that one answer holds. */
export const mostItems = 500;

/** The first item that does not fit, as a fault; no list at all, or one that is too long, is one too. */
export function listFault(value: unknown, fits: (item: unknown) => boolean, accepted: string): Fault {
	if (!Array.isArray(value) || value.length > mostItems) return faultOf(value, `a list of ${accepted}`);
	const at = value.findIndex(item => !fits(item));
	return at < 0 ? null : faultOf(value[at], accepted);
}
