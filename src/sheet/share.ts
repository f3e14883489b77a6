import { isObject } from './fault.ts';
import type { Sheet } from './sheet.ts';

/**
 * Puts the answers of a sheet read before in place of those of a sheet's JSON that say the same, letter for letter: what was
 * worked out for an answer is then found again by the object that it is. What is no sheet stays as it is, for the check to tell.
 */
export function shareAnswers(before: Sheet, data: unknown): void {
	if (!isObject(data) || !isObject(data.answers)) return;
	for (const [section, inside] of Object.entries(data.answers)) {
		if (!isObject(inside) || !Object.hasOwn(before.answers, section)) continue;
		const known = before.answers[section]!;
		for (const name of Object.keys(inside))
			if (Object.hasOwn(known, name) && alike(inside[name], known[name])) inside[name] = known[name];
	}
}

/** Whether two values of JSON would be written alike: the order of keys counts. */
function alike(a: unknown, b: unknown): boolean {
	if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return Object.is(a, b);
	if (Array.isArray(a) || Array.isArray(b))
		return Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((item, at) => alike(item, b[at]));
	const [keys, others] = [Object.keys(a), Object.keys(b)];
	return (
		keys.length === others.length &&
		keys.every(
			(key, at) =>
				key === others[at] && alike((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
		)
	);
}
