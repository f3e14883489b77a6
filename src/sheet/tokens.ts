/** How deep brackets go, those inside strings not counted, and how many brackets and strings there are. */
export function sizeOf(text: string): { readonly depth: number; readonly count: number } {
	let [depth, deepest, count] = [0, 0, 0];
	eachToken(text, mark => {
		count++;
		if (mark === '{' || mark === '[') deepest = Math.max(deepest, ++depth);
		else if (mark !== '"') depth--;
	});
	return { depth: deepest, count };
}

/** Of a JSON text: the first key that stands twice in one object, of which reading would silently drop one; where it does. */
export function repeatedKey(text: string): { readonly key: string; readonly at: number } | null {
	const open: Set<string>[] = [];
	let again: { key: string; at: number } | null = null;
	eachToken(text, (mark, at, end) => {
		if (again) return;
		if (mark === '{' || mark === '[') open.push(new Set());
		else if (mark !== '"') open.pop();
		else if (isKey(text, end)) {
			const inside = text.slice(at + 1, end - 1);
			const key: string = inside.includes('\\') ? JSON.parse(`"${inside}"`) : inside;
			const keys = open.at(-1)!;
			if (keys.has(key)) again = { key, at };
			keys.add(key);
		}
	});
	return again;
}

type Mark = '{' | '}' | '[' | ']' | '"';

/**
 * Tells the brackets and strings of a text, whether it is JSON or not, each from `at` up to `end`; a string that is never
 * closed ends with the text.
 */
function eachToken(text: string, tell: (mark: Mark, at: number, end: number) => void): void {
	for (let at = 0; at < text.length; at++) {
		const mark = text[at]!;
		if (mark === '"') {
			const end = stringEnd(text, at + 1);
			tell(mark, at, end);
			at = end - 1;
		} else if (mark === '{' || mark === '}' || mark === '[' || mark === ']') tell(mark, at, at + 1);
	}
}

/** Past the quote that closes a string whose text begins at `from`: one with an even count of backslashes before it. */
function stringEnd(text: string, from: number): number {
	for (let at = text.indexOf('"', from); at >= 0; at = text.indexOf('"', at + 1)) {
		let before = at;
		while (before > from && text[before - 1] === '\\') before--;
		if ((at - before) % 2 === 0) return at + 1;
	}
	return text.length;
}

/** In JSON a string with a colon after it is a key. */
function isKey(text: string, end: number): boolean {
	let at = end;
	while (' \t\r\n'.includes(text[at] ?? '.')) at++;
	return text[at] === ':';
}
