import { sanitize } from '../text/sanitize.ts';
import type { Block, Document, Inline } from './document.ts';

/** Plain and dark on light. On A4 or letter the cautions stand in two columns, so that the list begins on the first page. */
const style = `
body{font:15px/1.45 system-ui,sans-serif;max-width:46rem;margin:1.5rem auto;padding:0 1rem;color:#111;background:#fff}
h1{font-size:1.5rem}h2{font-size:1.2rem;margin-top:2rem;border-bottom:2px solid #444}h3{font-size:1.02rem}
h1,h2,h3{break-after:avoid}
ul.tasks{list-style:none;padding-left:0}ul.tasks>li{margin:.6rem 0;padding-left:1.7rem;position:relative;break-inside:avoid}
ul.tasks>li::before{content:"";position:absolute;left:0;top:.15rem;width:1rem;height:1rem;border:2px solid #111}
ul.tasks ul{padding-left:1rem;color:#333;font-size:.93em}
figure{margin:1rem 0;break-inside:avoid}figure svg{max-width:100%;height:auto}code{font-size:.9em}
.small{font-size:.9em}
@media print{
@page{margin:12mm}
body{font-size:9.5pt;line-height:1.35;margin:0;padding:0;max-width:none}
h1{font-size:15pt;margin:0 0 2mm}h2{font-size:12pt;margin:5mm 0 2mm}h3{font-size:10.5pt;margin:3mm 0 1mm}
p,ul,ol{margin:1.5mm 0}ul.tasks>li{margin:1.5mm 0}li{orphans:2;widows:2}
.small{font-size:8.5pt;line-height:1.25;columns:2;column-gap:6mm;padding-left:4mm}
.card{break-inside:avoid}.page{break-before:page}figure{margin:2mm 0}figure svg{width:125mm}
}`.trim();

/** Prints a document as one HTML file: style and figures inside, no script. */
export function printHtml({ title, blocks }: Document): string {
	return [
		'<!doctype html>',
		'<html lang="en">',
		`<head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${escaped(title)}</title><style>${style}</style></head>`,
		'<body>',
		...parted(blocks).map(printPart),
		'</body>',
		'</html>',
		'',
	].join('\n');
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

function printPart(blocks: readonly Block[]): string {
	const [first] = blocks;
	const sort = first?.is !== 'heading' ? '' : first.card ? 'card' : first.page ? 'page' : '';
	const card = sort ? ` class="${sort}"` : '';
	return [`<section${card}>`, ...grouped(blocks), '</section>'].join('\n');
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
			return `<h${block.level}>${escaped(block.text)}</h${block.level}>`;
		case 'paragraph':
			return `<p>${inline(block.text)}</p>`;
		case 'task':
			return `<li>${inline(block.text)}${block.details.length > 0 ? list('ul', block.details) : ''}</li>`;
		case 'items':
			return list('ul', block.items, block.small ? ' class="small"' : '');
		case 'steps':
			return list('ol', block.items);
		case 'figure':
			return `<figure>${block.svg}</figure>`;
	}
}

const list = (tag: 'ul' | 'ol', items: readonly (readonly Inline[])[], look = ''): string =>
	`<${tag}${look}>${items.map(item => `<li>${inline(item)}</li>`).join('')}</${tag}>`;

function inline(text: readonly Inline[]): string {
	return text
		.map(part => {
			if (typeof part === 'string') return escaped(part);
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
