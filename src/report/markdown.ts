import { sanitize } from '../text/sanitize.ts';
import { anchorOf, type Block, type Document, type Inline } from './document.ts';

/** Columns a line is wrapped at: short enough for paper on a wall. */
const width = 100;

/**
 * Prints the blocks of a document as Markdown. Figures are shown by name: they are files next to it; without a stem they are left
 * out. `parts` is the file that links to parts of the document lead to, empty for this one; null: their names only.
 */
export function printMarkdown({ blocks }: Document, stem: string | null, parts: string | null = null): string {
	let text = '';
	let before: Block | undefined;
	for (const block of blocks) {
		const printed = print(block, stem, parts);
		if (printed === '') continue;
		text += before === undefined ? '' : isLine(before) && isLine(block) ? '\n' : '\n\n';
		text += printed;
		before = block;
	}
	return `${text}\n`;
}

/** What stands under its like without a gap: a task with nothing below it or that says so, a fold. */
const isLine = (block: Block): boolean =>
	block.is === 'fold' || (block.is === 'task' && (block.close === true || block.details.length === 0));

function print(block: Block, stem: string | null, parts: string | null): string {
	switch (block.is) {
		case 'heading':
			return `${'#'.repeat(block.level)} ${escaped(block.text)}`;
		case 'paragraph':
			return wrap(inline(block.text), '');
		case 'task':
			// Four spaces make a list inside the task everywhere; six, the width of the mark, would not.
			return [wrap(inline(block.text), '- [ ] '), ...block.details.map(detail => wrap(inline(detail), '    - '))].join(
				'\n',
			);
		case 'items':
			return block.items.map(item => wrap(inline(item, parts), '- ')).join('\n');
		case 'steps':
			return block.items.map((item, index) => wrap(inline(item), `${index + 1}. `)).join('\n');
		case 'fold':
			return wrap(inline([{ strong: `${block.text}: ` }, `${block.note}.`]), '- ');
		case 'figure':
			return stem === null ? '' : `![${escaped(block.title)}](${stem}-${block.name}.svg)`;
	}
}

/** Text at the start of a block; what would start a list, a heading or a table there is escaped. */
function inline(text: readonly Inline[], parts: string | null = null): string {
	let line = '';
	for (const part of text) {
		if (typeof part === 'string') line += escaped(part);
		else if ('strong' in part) line += emphasis(part.strong);
		else if ('part' in part) line += link(part.part, parts);
		// Ids stand in code; anything else could end it.
		else line += /^[\w., -]+$/.test(part.code) ? `\`${part.code}\`` : escaped(part.code);
	}
	if (!/^\s*[-+=#:\d]/.test(line)) return line;
	return line.replace(/^(\s*)([-+=#:])/, '$1\\$2').replace(/^(\s*\d+)([.)])(?=\s|$)/, '$1\\$2');
}

function link(part: string, parts: string | null): string {
	return parts === null ? escaped(part) : `[${escaped(part)}](${parts}#${anchorOf(part)})`;
}

/** Bold text; its spaces stay outside the marks, or the marks would stay visible. */
function emphasis(text: string): string {
	const shown = escaped(text);
	const inner = shown.trim();
	return inner === '' ? shown : shown.replace(inner, () => `**${inner}**`);
}

/** Whatever `escaped` may have to change, and little else: most words hold none of it. */
const unusual = /[^ -~]|[&<>\\`*[\]|~@]|_(?![a-z0-9])|(?<![a-z0-9])_|[pso]:\S|w\.\S/i;

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;' };

/**
 * The one place where text becomes Markdown: `<`, `>` and `&` as entities, and whatever could start emphasis, code, a
 * link or a table cell is escaped.
 */
function escaped(text: string): string {
	if (!unusual.test(text)) return text;
	return (
		sanitize(text)
			.replace(/[&<>\\`*[\]|~]|(?<![\p{L}\p{N}])_|_(?![\p{L}\p{N}])/gu, mark => entities[mark] ?? `\\${mark}`)
			// Addresses must not become links by themselves; they stay readable.
			.replace(/(https?|ftp|mailto|xmpp):(?=\S)/gi, '$1: ')
			.replace(/(www)\.(?=\S)/gi, '$1 .')
			.replace(/@(?=\S)/g, '(at)')
	);
}

/** What Markdown would take for a mark of its own at the beginning of a line. */
const begins = /[-+=#:>|~]|\d+[.)](?: |$)/y;

/** Wraps at spaces, indented under `mark`. A line never begins with something that Markdown would take for a mark. */
function wrap(text: string, mark: string): string {
	const plain = text.includes('  ') ? text.replace(/ +/g, ' ') : text;
	const room = width - mark.length;
	let lines = mark;
	let start = 0;
	while (plain.length - start > room) {
		let end = plain.lastIndexOf(' ', start + room);
		// A word too long for a line has one of its own.
		if (end < start) end = plain.indexOf(' ', start + room);
		while (end >= 0 && beginsMark(plain, end + 1)) end = plain.indexOf(' ', end + 1);
		if (end < 0) break;
		lines += `${plain.slice(start, end)}\n${' '.repeat(mark.length)}`;
		start = end + 1;
	}
	return lines + plain.slice(start);
}

function beginsMark(text: string, at: number): boolean {
	begins.lastIndex = at;
	return begins.test(text);
}
