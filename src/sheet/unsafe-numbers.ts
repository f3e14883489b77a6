import { isObject } from './fault.ts';
import type { SheetProblem } from './problem.ts';

/**
 * What stands beside the answers is kept as it is, whatever it means. A number that would come back as another one when the
 * sheet is saved is reported instead: one too large to read, or a whole one with more digits than a number holds.
 */
export function* unsafeNumbers(top: Readonly<Record<string, unknown>>): Generator<SheetProblem> {
	for (const key of Object.keys(top)) if (key !== 'answers') yield* within(key, top[key]);
}

function* within(path: string, value: unknown): Generator<SheetProblem> {
	if (typeof value === 'number' && !isKept(value)) {
		const found = Number.isFinite(value) ? 'a number with more digits than can be kept' : 'a number too large to read';
		yield { path, found, accepted: 'a smaller number, or the number as a text' };
	}
	if (Array.isArray(value)) for (const [index, item] of value.entries()) yield* within(`${path}[${index}]`, item);
	if (isObject(value)) for (const key of Object.keys(value)) yield* within(`${path}.${key}`, value[key]);
}

/** Whole numbers up to 2^53; the digits of a fraction beyond the sixteenth mean nothing to anybody. */
const isKept = (value: number): boolean =>
	Number.isInteger(value) ? Number.isSafeInteger(value) : Number.isFinite(value);
