import { clean } from './clean.ts';
import type { Block, Document, Inline } from './document.ts';

/** Columns a line is wrapped at: short enough for paper on a wall. */
const width = 100;

/** Prints a document as Markdown. Figures are shown by name: they are files beside it; without a stem they are left out. */
export function printMarkdown({ blocks }: Document, stem: string | null): string {
	let text = '';
	let before: Block | undefined;
	for (const block of blocks) {
		const printed = print(block, stem);
		if (printed === '') continue;
		text += before === undefined ? '' : isLine(before) && isLine(block) ? '\n' : '\n\n';
		text += printed;
		before = block;
	}
	return `${text}\n`;
}

/** A task with nothing below it: such tasks stand under each other without a gap. */
const isLine = (block: Block): boolean => block.is === 'task' && block.details.length === 0;

function print(block: Block, stem: string | null): string {
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
			return block.items.map(item => wrap(inline(item), '- ')).join('\n');
		case 'steps':
			return block.items.map((item, index) => wrap(inline(item), `${index + 1}. `)).join('\n');
		case 'figure':
			return stem === null ? '' : `![${escaped(block.title)}](${stem}-${block.name}.svg)`;
	}
}

/** Text at the start of a block; what would start a list, a heading or a table there is escaped. */
function inline(text: readonly Inline[]): string {
	return text
		.map(part => {
			if (typeof part === 'string') return escaped(part);
			if ('strong' in part) return emphasis(part.strong);
			// Ids stand in code; anything else could end it.
			return /^[\w., -]+$/.test(part.code) ? `\`${part.code}\`` : escaped(part.code);
		})
		.join('')
		.replace(/^(\s*)([-+=#:])/, '$1\\$2')
		.replace(/^(\s*\d+)([.)])(?=\s|$)/, '$1\\$2');
}

/** Bold text; its spaces stay outside the marks, or the marks would stay visible. */
function emphasis(text: string): string {
	const [, before = '', inner = '', after = ''] = /^(\s*)(.*?)(\s*)$/s.exec(escaped(text)) ?? [];
	return inner === '' ? before + after : `${before}**${inner}**${after}`;
}

/**
 * The one place where text becomes Markdown: `<`, `>` and `&` as entities, and whatever could start emphasis, code, a
 * link or a table cell is escaped.
 */
function escaped(text: string): string {
	// Most words hold nothing to escape.
	if (/^[A-Za-z0-9 ,;()'"/%-]*$/.test(text)) return text;
	return (
		clean(text)
			.replaceAll('&', '&amp;')
			.replaceAll('<', '&lt;')
			.replaceAll('>', '&gt;')
			.replace(/[\\`*[\]|~]/g, mark => `\\${mark}`)
			.replace(/(?<![\p{L}\p{N}])_|_(?![\p{L}\p{N}])/gu, '\\_')
			// Addresses must not become links by themselves; they stay readable.
			.replace(/(https?|ftp|mailto|xmpp):(?=\S)/gi, '$1: ')
			.replace(/(www)\.(?=\S)/gi, '$1 .')
			.replace(/@(?=\S)/g, '(at)')
	);
}

/** Wraps at spaces, indented under `mark`. A line never begins with something that Markdown would take for a mark of its own. */
function wrap(text: string, mark: string): string {
	const lines: string[] = [];
	let line = mark;
	let empty = true;
	for (const word of text.split(/ +/)) {
		const starts = /^([-+=#:>|~]|\d+[.)]$)/.test(word);
		if (!empty && !starts && line.length + 1 + word.length > width) {
			lines.push(line);
			line = ' '.repeat(mark.length) + word;
		} else {
			line += empty ? word : ` ${word}`;
		}
		empty = false;
	}
	return [...lines, line].join('\n');
}
