/** A bracket or a whole string of a JSON text, from `at` up to `end`. */
interface Token {
	readonly mark: '{' | '}' | '[' | ']' | '"';
	readonly at: number;
	readonly end: number;
}

/** The brackets and strings of a text, whether it is JSON or not; a string that is never closed ends with the text. */
function* tokensOf(text: string): Generator<Token> {
	const marks = /["{}[\]]/g;
	for (let found = marks.exec(text); found; found = marks.exec(text)) {
		const mark = found[0] as Token['mark'];
		if (mark === '"') marks.lastIndex = stringEnd(text, marks.lastIndex);
		yield { mark, at: found.index, end: marks.lastIndex };
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

/** How deep brackets go, those inside strings not counted, and how many brackets and strings there are. */
export function sizeOf(text: string): { readonly depth: number; readonly count: number } {
	let [depth, deepest, count] = [0, 0, 0];
	for (const { mark } of tokensOf(text)) {
		count++;
		if (mark === '{' || mark === '[') deepest = Math.max(deepest, ++depth);
		else if (mark !== '"') depth--;
	}
	return { depth: deepest, count };
}

/** Of a JSON text: the first key that stands twice in one object, of which reading would silently drop one; where it does. */
export function repeatedKey(text: string): { readonly key: string; readonly at: number } | null {
	const open: Set<string>[] = [];
	for (const { mark, at, end } of tokensOf(text)) {
		if (mark === '{' || mark === '[') open.push(new Set());
		else if (mark !== '"') open.pop();
		else if (isKey(text, end)) {
			const key: string = JSON.parse(text.slice(at, end));
			const keys = open.at(-1)!;
			if (keys.has(key)) return { key, at };
			keys.add(key);
		}
	}
	return null;
}

/** In JSON a string with a colon after it is a key. */
function isKey(text: string, end: number): boolean {
	let at = end;
	while (' \t\r\n'.includes(text[at] ?? '.')) at++;
	return text[at] === ':';
}
