import { sanitize } from '../text/sanitize.ts';
import { placeWords } from '../wording/places.ts';
import { stageTitles } from '../wording/stages.ts';

import { anchorOf, type Block, type Document, type Inline } from './document.ts';
import { pageScript } from './page-script.ts';
import { pageStyle } from './page-style.ts';

/** SHA-256 of a text, as hexadecimal digits. */
type Hash = (text: string) => string;

/**
 * Prints a document as one HTML file that reaches for nothing outside. Its style and its one script stand inside, named by
 * their hashes in a content security policy; without the script it is whole. A document without tasks has no script.
 */
export function printHtml(document: Document, hash: Hash): string {
	const { title, blocks, details = [] } = document;
	const tasks = tasksIn(blocks);
	const marked = tasks.length > 0;
	const policy = [
		"default-src 'none'",
		`style-src ${named(hash(pageStyle))}`,
		...(marked ? [`script-src ${named(hash(pageScript))}`] : []),
		"base-uri 'none'",
		"form-action 'none'",
	].join('; ');
	return [
		'<!doctype html>',
		'<html lang="en">',
		`<head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="${policy}"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${escaped(title)}</title><style>${pageStyle}</style></head>`,
		`<body data-sheet="${escaped(title)}">`,
		...(marked ? [tools(tasks)] : []),
		...parted(blocks).map((part, index) => printPart(part, index === 0 && details.length > 0 ? 'first' : '')),
		...(details.length > 0
			? [
					'<details class="lookup"><summary>Details to look up</summary>',
					...parted(details).map(part => printPart(part)),
					'</details>',
				]
			: []),
		...(marked ? [`<script>${pageScript}</script>`] : []),
		'</body>',
		'</html>',
		'',
	].join('\n');
}

/** A hash as a policy names it: base64 of its bytes. */
const named = (hex: string): string =>
	`'sha256-${btoa(String.fromCharCode(...(hex.match(/../g) ?? []).map(byte => Number.parseInt(byte, 16))))}'`;

type Task = Extract<Block, { is: 'task' }>;

const tasksIn = (blocks: readonly Block[]): Task[] =>
	blocks.flatMap(block => (block.is === 'task' ? [block] : block.is === 'fold' ? tasksIn(block.blocks) : []));

/** The filter by place and stage, shown by the script; it holds what the tasks name, in the order of the work. */
function tools(tasks: readonly Task[]): string {
	const options = (words: Readonly<Record<string, string>>, used: (task: Task) => string | undefined) => {
		const found = new Set(tasks.map(used));
		return Object.entries(words)
			.filter(([id]) => found.has(id))
			.map(([id, text]) => `<option value="${id}">${escaped(text)}</option>`)
			.join('');
	};
	return [
		'<div id="tools" hidden>',
		...(tasks.some(({ mark }) => mark)
			? [
					`<select aria-label="Place"><option value="">Every place</option>${options(placeWords, ({ mark }) => mark?.access)}</select>`,
					`<select aria-label="Stage"><option value="">Every stage</option>${options(stageTitles, ({ mark }) => mark?.stage)}</select>`,
				]
			: []),
		'<label><input type="checkbox" id="open-only"> open only</label>',
		'<p id="says" role="status"></p>',
		'</div>',
	].join('');
}

/** The blocks by part: a heading of the second level begins one. */
function parted(blocks: readonly Block[]): Block[][] {
	const parts: Block[][] = [];
	for (const block of blocks) {
		if (parts.length === 0 || (block.is === 'heading' && block.level === 2)) parts.push([]);
		parts.at(-1)!.push(block);
	}
	return parts;
}

function printPart(blocks: readonly Block[], look = ''): string {
	const [first] = blocks;
	const own = first?.is !== 'heading' ? '' : first.card ? 'card' : first.page ? 'page' : '';
	const looks = [look, own].filter(Boolean).join(' ');
	return [`<section${looks === '' ? '' : ` class="${looks}"`}>`, ...grouped(blocks), '</section>'].join('\n');
}

/** Tasks that follow each other are one list. */
function grouped(blocks: readonly Block[]): string[] {
	return blocks.flatMap((block, index) => [
		...(block.is === 'task' && blocks[index - 1]?.is !== 'task' ? ['<ul class="tasks">'] : []),
		print(block),
		...(block.is === 'task' && blocks[index + 1]?.is !== 'task' ? ['</ul>'] : []),
	]);
}

function print(block: Block): string {
	switch (block.is) {
		case 'heading':
			return `<h${block.level}${block.level === 2 ? ` id="${anchorOf(block.text)}"` : ''}>${escaped(block.text)}</h${block.level}>`;
		case 'paragraph':
			return `<p>${inline(block.text)}</p>`;
		case 'task':
			return `<li>${box(block)}${inline(block.text)}${block.details.length > 0 ? list('ul', block.details) : ''}</li>`;
		case 'items':
			return list('ul', block.items, block.small ? ' class="small"' : '');
		case 'steps':
			return list('ol', block.items);
		case 'fold':
			return [
				`<details class="stage"><summary>${escaped(block.text)}: ${escaped(block.note)}</summary>`,
				...grouped(block.blocks),
				'</details>',
			].join('\n');
		case 'figure':
			return `<figure>${block.svg}</figure>`;
	}
}

/** A box to tick; its key, place and stage are for the script. What has no key of its own is known by its words. */
function box({ mark, text }: Task): string {
	const words = text.map(part => (typeof part === 'string' ? '' : 'strong' in part ? part.strong : '')).join('');
	const label = escaped(words);
	const place = mark ? ` data-place="${mark.access}" data-stage="${mark.stage}"` : '';
	return `<input type="checkbox" aria-label="${label}" data-key="${mark ? escaped(mark.key) : label}"${place}>`;
}

const list = (tag: 'ul' | 'ol', items: readonly (readonly Inline[])[], look = ''): string =>
	`<${tag}${look}>${items.map(item => `<li>${inline(item)}</li>`).join('')}</${tag}>`;

function inline(text: readonly Inline[]): string {
	return text
		.map(part => {
			if (typeof part === 'string') return escaped(part);
			if ('part' in part) return `<a href="#${anchorOf(part.part)}">${escaped(part.part)}</a>`;
			return 'strong' in part ? `<strong>${escaped(part.strong)}</strong>` : `<code>${escaped(part.code)}</code>`;
		})
		.join('');
}

/** The one place where text becomes HTML. */
export function escaped(text: string): string {
	return sanitize(text)
		.replaceAll('&', '&amp;')
		.replaceAll('<', '&lt;')
		.replaceAll('>', '&gt;')
		.replaceAll('"', '&quot;')
		.replaceAll("'", '&#39;');
}
