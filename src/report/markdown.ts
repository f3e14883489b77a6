import { clean } from './clean.ts';
import type { Block, Document, Inline } from './document.ts';

/** Columns a line is wrapped at: short enough for paper on a wall. */
const width = 100;

/** Prints a document as Markdown. Figures are shown by name: they are files beside it; without a stem they are left out. */
export function printMarkdown({ blocks }: Document, stem: string | null): string {
	const parts = blocks.map(block => print(block, stem)).filter(part => part !== '');
	return `${parts.join('\n\n')}\n`;
}

function print(block: Block, stem: string | null): string {
	switch (block.is) {
		case 'heading':
			return `${'#'.repeat(block.level)} ${escaped(block.text)}`;
		case 'paragraph':
			return wrap(inline(block.text), '', '');
		case 'task':
			return [
				wrap(inline(block.text), '- [ ] ', '      '),
				...block.details.map(detail => wrap(inline(detail), '      - ', '        ')),
			].join('\n');
		case 'items':
			return block.items.map(item => wrap(inline(item), '- ', '  ')).join('\n');
		case 'steps':
			return block.items.map((item, index) => wrap(inline(item), `${index + 1}. `, '   ')).join('\n');
		case 'table':
			return table(block.head, block.rows);
		case 'figure':
			return stem === null ? '' : `![${escaped(block.title)}](${stem}-${block.name}.svg)`;
	}
}

function inline(text: readonly Inline[]): string {
	return text
		.map(part => {
			if (typeof part === 'string') return escaped(part);
			if ('strong' in part) return emphasis(part.strong);
			// Ids stand in code; anything else could start a block of its own at the start of a line.
			return /^[\w., -]+$/.test(part.code) ? `\`${part.code}\`` : escaped(part.code);
		})
		.join('');
}

/** Bold text; its spaces stay outside the marks, or the marks would stay visible. */
function emphasis(text: string): string {
	const [, before = '', inner = '', after = ''] = /^(\s*)(.*?)(\s*)$/s.exec(text) ?? [];
	return inner === '' ? text : `${before}**${escaped(inner)}**${after}`;
}

/**
 * The one place where text becomes Markdown: `<`, `>` and `&` as entities, and whatever could start emphasis, code, a
 * link, a table cell, a list or a heading is escaped.
 */
function escaped(text: string): string {
	return (
		clean(text)
			.replaceAll('&', '&amp;')
			.replaceAll('<', '&lt;')
			.replaceAll('>', '&gt;')
			.replace(/[\\`*[\]|~]/g, mark => `\\${mark}`)
			.replace(/(?<![\p{L}\p{N}])_|_(?![\p{L}\p{N}])/gu, '\\_')
			.replace(/^(\s*)([-+=#:])/, '$1\\$2')
			.replace(/^(\s*\d+)([.)])(?=\s|$)/, '$1\\$2')
			// Addresses must not become links by themselves; they stay readable.
			.replace(/(https?|ftp|mailto|xmpp):(?=\S)/gi, '$1: ')
			.replace(/(www)\.(?=\S)/gi, '$1 .')
			.replace(/@(?=\S)/g, '(at)')
	);
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
	const cells = (row: readonly string[]) => `| ${row.map(escaped).join(' | ')} |`;
	return [cells(head), `|${head.map(() => ' --- |').join('')}`, ...rows.map(cells)].join('\n');
}

/** Wraps at spaces. A line never begins with something that Markdown would take for a mark of its own. */
function wrap(text: string, first: string, rest: string): string {
	const lines: string[] = [];
	let line = first;
	let empty = true;
	for (const word of text.split(/ +/)) {
		const starts = /^([-+=#:>|~]|\d+[.)]$)/.test(word);
		if (!empty && !starts && line.length + 1 + word.length > width) {
			lines.push(line);
			line = rest + word;
		} else {
			line += empty ? word : ` ${word}`;
		}
		empty = false;
	}
	return [...lines, line].join('\n');
}
