import { type ParseErrorCode, visit } from 'jsonc-parser';

/** Signs of JSON, as they are coded. */
const sign = {
	quote: 34,
	colon: 58,
	openBracket: 91,
	backslash: 92,
	closeBracket: 93,
	openBrace: 123,
	closeBrace: 125,
};

/**
 * How deep the brackets of a JSON text go, how many brackets and strings it has, and how many keys; of a text that is no JSON what
 * stands before its first fault counts so. The library's scanner makes a text of each string, which takes ten times as long.
 */
export function sizeOf(text: string): { readonly depth: number; readonly count: number; readonly keys: number } {
	let [depth, deepest, count, keys] = [0, 0, 0, 0];
	for (let at = 0; at < text.length; at++) {
		const code = text.charCodeAt(at);
		if (code === sign.quote) {
			count++;
			at = endOfString(text, at);
		} else if (code === sign.openBrace || code === sign.openBracket) {
			count++;
			deepest = Math.max(deepest, ++depth);
		} else if (code === sign.closeBrace || code === sign.closeBracket) {
			count++;
			depth--;
		} else if (code === sign.colon) keys++;
	}
	return { depth: deepest, count, keys };
}

/** Where the string ends that begins there. */
function endOfString(text: string, begin: number): number {
	for (let at = begin + 1; at < text.length; at++) {
		const code = text.charCodeAt(at);
		if (code === sign.quote) return at;
		if (code === sign.backslash) at++;
	}
	return text.length;
}

/** A place in a text, both counted from 1. */
export interface Place {
	readonly line: number;
	readonly column: number;
}

/** What is wrong with a JSON text and where; null for `at` when the text ends before the JSON does. */
export interface Fault {
	readonly reason: string;
	readonly at: Place | null;
}

const reasons: Readonly<Record<ParseErrorCode, string>> = {
	1: 'not a JSON value',
	2: 'not a JSON number',
	3: 'a key in double quotes is missing, or there is a comma too many before it',
	4: 'a value is missing, or there is a comma too many before it',
	5: 'a colon is missing',
	6: 'a comma is missing',
	7: 'a closing } is missing',
	8: 'a closing ] is missing',
	9: 'text after the end',
	10: 'a comment, which JSON does not have',
	11: 'a comment, which JSON does not have',
	12: 'a string without its closing quote',
	13: 'a number that breaks off',
	14: 'a broken \\u escape',
	15: 'an escape that JSON does not have',
	16: 'a control character in a string',
};

/** The first fault of a text that is not JSON; null where none is found. `sizeOf` must have bounded its depth. */
export function firstFault(text: string): Fault | null {
	let fault: Fault | null = null;
	const end = text.trimEnd().length;
	const found = new Error('the first fault');
	const onError = (code: ParseErrorCode, offset: number, _length: number, line: number, character: number) => {
		const at = offset >= end ? null : { line: line + 1, column: character + 1 };
		fault = { reason: reasons[code], at };
		// What stands behind it may be deeper than `sizeOf` knows.
		throw found;
	};
	try {
		visit(text, { onError }, { disallowComments: true });
	} catch (error) {
		if (error !== found) throw error;
	}
	return fault;
}

/** How many keys there are in data that was read from JSON: fewer than in its text where one stands twice. */
export function keysIn(data: unknown): number {
	let keys = 0;
	if (typeof data !== 'object' || data === null) return keys;
	const inside: readonly unknown[] = Array.isArray(data) ? data : Object.values(data);
	if (!Array.isArray(data)) keys += inside.length;
	for (const value of inside) if (typeof value === 'object') keys += keysIn(value);
	return keys;
}

/** Of a JSON text: the first key that stands twice in one object, of which reading would silently drop one. */
export function repeatedKey(text: string): { readonly key: string; readonly at: Place } | null {
	const open: Set<string>[] = [];
	let repeated: { key: string; at: Place } | null = null;
	visit(text, {
		onObjectBegin: () => {
			open.push(new Set());
		},
		onObjectEnd: () => {
			open.pop();
		},
		onObjectProperty: (key, _offset, _length, line, character) => {
			const keys = open.at(-1)!;
			if (keys.has(key)) repeated ??= { key, at: { line: line + 1, column: character + 1 } };
			keys.add(key);
		},
	});
	return repeated;
}
