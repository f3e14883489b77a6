import { Composer, CST, isMap, isScalar, isSeq, Lexer, Parser, type YAMLMap } from 'yaml';

/** Something in a text that is not taken, and where. */
type Refuse = (offset: number, message: string) => void;

/** A text read as YAML: the mapping that it is, or null; and what is wrong with it, by its offset in the text. */
export interface ReadYaml {
	readonly root: YAMLMap | null;
	readonly faults: readonly (readonly [offset: number, message: string])[];
}

/** No rule file needs more; a longer one is refused before it is read. In characters. */
export const longest = 200_000;
/** Lists and mappings inside each other. A topic goes 9 deep as the parser counts. */
const deepest = 32;

/** What of YAML is refused, although it is YAML: it hides what a file says, or makes it another thing than it looks. */
const unwanted: Readonly<Record<string, string>> = {
	anchor: 'anchors (&name) are not used in rule files: write it out where it is needed, or put the text in quotes',
	alias: 'aliases (*name) are not used in rule files: write it out where it is needed, or put the text in quotes',
	tag: 'tags (!name) are not used in rule files: leave it away, or put the text in quotes',
	'directive-line': 'directives (%YAML ...) are not used in rule files: leave the line away',
};

/** Characters that no editor shows: control characters, and those that turn the writing round. */
const unseen =
	/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\uffff]|[\u{e0000}-\u{e007f}]|\p{Cs}/u;

/**
 * The mapping that a rule file is, or null and why not. One pass over the lexemes refuses anchors, aliases, tags and deep
 * nesting before anything is built from them, so that no file can grow or hang.
 */
export function readYaml(text: string): ReadYaml {
	const faults: [number, string][] = [];
	const root = mappingOf(text, (offset, message) => faults.push([offset, message]));
	return { root, faults };
}

function mappingOf(text: string, refuse: Refuse): YAMLMap | null {
	if (text.length > longest) {
		refuse(0, `a rule file has at most ${longest} characters, this one has ${text.length}: split it into topics`);
		return null;
	}
	const hidden = unseen.exec(text);
	if (hidden) {
		refuse(hidden.index, unseenIn(hidden[0]));
		return null;
	}
	const tokens = tokensOf(text, refuse);
	if (!tokens) return null;
	const [document, second] = [...new Composer({ uniqueKeys: false }).compose(tokens, true, text.length)];
	if (second) refuse(second.range[0], 'a second document: a rule file is one, without --- between');
	const reported = new Set<number>();
	for (const { pos, message, code } of document!.errors) {
		// The parser reports one slip of the indent twice, at one place.
		const slip =
			code in mends && reported.has(pos[0]) ? null : (indentSlip(text, pos[0]) ?? `${message}${mends[code] ?? ''}`);
		reported.add(pos[0]);
		if (slip !== null) refuse(pos[0], `not YAML: ${slip}`);
	}
	if (second || document!.errors.length > 0) return null;
	if (!isMap(document!.contents)) {
		const found = document!.contents === null ? 'this file is empty' : 'this is no mapping';
		refuse(0, `${found}: a rule file is a mapping of names (topic:, questions:, rules: ...)`);
		return null;
	}
	return isPlain(document!.contents, refuse) ? document!.contents : null;
}

const unseenIn = (sign: string) =>
	`a character that cannot be seen (U+${sign.codePointAt(0)!.toString(16).padStart(4, '0')}): take it out`;

/** A line that stands further in than the one before it, which has its value already; null where that is not it. */
function indentSlip(text: string, offset: number): string | null {
	const before = text.slice(0, offset).split('\n');
	const line = before.length;
	const [this_, next = ''] = text.split('\n').slice(line - 1, line + 1);
	const indentOf = (each: string) => /^[ -]*/.exec(each)![0].length;
	const hasValue = /^[ -]*[\w.-]+: +[^\s#|>&*]/.test(this_!);
	if (!hasValue || !/^ +[\w.-]+:( |$)/.test(next) || indentOf(next) <= indentOf(this_!)) return null;
	return `line ${line + 1} stands further in than line ${line}, which has its value already: give both the same indent`;
}

const quotes = '. A text with ": " or " #" in it, or that begins with a sign, goes in quotes';
const mends: Readonly<Record<string, string>> = {
	BAD_SCALAR_START: '. Put it in quotes, like unit: "%"',
	BLOCK_AS_IMPLICIT_KEY: quotes,
	MISSING_CHAR: quotes,
	MULTILINE_IMPLICIT_KEY: quotes,
	UNEXPECTED_TOKEN: quotes,
	TAB_AS_INDENT: '. Indent with spaces',
	BAD_INDENT: '. Each level stands two spaces further in',
};

function tokensOf(text: string, refuse: Refuse): CST.Token[] | null {
	const parser = new Parser();
	const tokens: CST.Token[] = [];
	let fine = true;
	let inScalar = false;
	for (const lexeme of new Lexer().lex(text)) {
		// Behind the mark of a scalar stands its text, whatever it begins with.
		const type: CST.TokenType | null = inScalar ? null : CST.tokenType(lexeme);
		inScalar = type === 'scalar';
		const message = type && unwanted[type];
		if (message) {
			refuse(parser.offset, message);
			fine = false;
		}
		tokens.push(...parser.next(lexeme));
		if (parser.stack.length > deepest) {
			refuse(parser.offset, `lists and mappings more than ${deepest} deep inside each other`);
			return null;
		}
	}
	tokens.push(...parser.end());
	return fine ? tokens : null;
}

/** Every key is a plain name and stands once in its mapping, and no escape makes an unseen character; reports each fault. */
function isPlain(root: YAMLMap, refuse: Refuse): boolean {
	let fine = true;
	const fault = (node: unknown, message: string) => {
		refuse(offsetOf(node), message);
		fine = false;
	};
	const open: unknown[] = [root];
	for (let node = open.pop(); node !== undefined; node = open.pop()) {
		const hidden = isScalar(node) && typeof node.value === 'string' && unseen.exec(node.value);
		if (hidden) fault(node, unseenIn(hidden[0]));
		if (isSeq(node)) open.push(...node.items.filter(Boolean));
		if (!isMap(node)) continue;
		const seen = new Set<string>();
		for (const { key, value } of node.items) {
			const name = keyName(key);
			if (name === null) fault(key ?? node, 'a name before a colon is one word or text, not a list or a mapping');
			else if (name === '<<') fault(key, 'merge keys (<<) are not used in rule files: write it out');
			else if (seen.has(name)) fault(key, `${JSON.stringify(name)} stands here twice: take one away`);
			if (name !== null) seen.add(name);
			open.push(key);
			if (value) open.push(value);
		}
	}
	return fine;
}

/** A key as its text: `45` is "45". */
export function keyName(key: unknown): string | null {
	if (!isScalar(key)) return null;
	return typeof key.value === 'string' ? key.value : (key.source ?? String(key.value));
}

/** Where a YAML node starts. */
export function offsetOf(node: unknown): number {
	return (node as { range?: readonly number[] } | null)?.range?.[0] ?? 0;
}
