/** A bracket or a whole string of a JSON text, from `at` up to `end`. */
interface Token {
	readonly mark: '{' | '}' | '[' | ']' | '"';
	readonly at: number;
	readonly end: number;
}

const brackets = '{}[]';

/** The brackets and strings of a text, whether it is JSON or not; a string that is never closed ends with the text. */
function* tokensOf(text: string): Generator<Token> {
	for (let at = 0; at < text.length; at++) {
		const mark = text[at]!;
		if (brackets.includes(mark)) yield { mark: mark as Token['mark'], at, end: at + 1 };
		if (mark !== '"') continue;
		const start = at++;
		while (at < text.length && text[at] !== '"') at += text[at] === '\\' ? 2 : 1;
		yield { mark: '"', at: start, end: at + 1 };
	}
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
