import { clean } from './clean.ts';
import type { Block, Document, Inline } from './document.ts';

/** Plain and dark on light; prints on A4 and letter, the list from the first page on. */
const style = `
body{font:15px/1.45 system-ui,sans-serif;max-width:46rem;margin:1.5rem auto;padding:0 1rem;color:#111;background:#fff}
h1{font-size:1.5rem}h2{font-size:1.2rem;margin-top:2rem;border-bottom:2px solid #444}h3{font-size:1.02rem}
ul.tasks{list-style:none;padding-left:0}ul.tasks>li{margin:.6rem 0;padding-left:1.7rem;position:relative;break-inside:avoid}
ul.tasks>li::before{content:"";position:absolute;left:0;top:.15rem;width:1rem;height:1rem;border:2px solid #111}
ul.tasks ul{padding-left:1rem;color:#333;font-size:.92rem}
table{border-collapse:collapse;font-size:.85rem}th,td{border:1px solid #999;padding:.2rem .4rem;text-align:left;vertical-align:top}
figure{margin:1rem 0}figure svg{max-width:100%;height:auto}code{font-size:.9em}
@media print{body{font-size:11px;margin:0;max-width:none}h2{margin-top:1rem}a{color:inherit}@page{margin:14mm}}
`.trim();

/** Prints a document as one HTML file: style and figures inside, no script. */
export function printHtml({ title, blocks }: Document): string {
	return [
		'<!doctype html>',
		'<html lang="en">',
		`<head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${escaped(title)}</title><style>${style}</style></head>`,
		'<body>',
		...grouped(blocks),
		'</body>',
		'</html>',
		'',
	].join('\n');
}

/** Tasks that follow each other are one list. */
function grouped(blocks: readonly Block[]): string[] {
	const lines: string[] = [];
	for (const [index, block] of blocks.entries()) {
		if (block.is === 'task' && blocks[index - 1]?.is !== 'task') lines.push('<ul class="tasks">');
		lines.push(print(block));
		if (block.is === 'task' && blocks[index + 1]?.is !== 'task') lines.push('</ul>');
	}
	return lines;
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
			return list('ul', block.items);
		case 'steps':
			return list('ol', block.items);
		case 'table': {
			const row = (cells: readonly string[], tag: 'th' | 'td') =>
				`<tr>${cells.map(cell => `<${tag}>${escaped(cell)}</${tag}>`).join('')}</tr>`;
			return `<table>\n${row(block.head, 'th')}\n${block.rows.map(cells => row(cells, 'td')).join('\n')}\n</table>`;
		}
		case 'figure':
			return `<figure>${block.svg}</figure>`;
	}
}

const list = (tag: 'ul' | 'ol', items: readonly (readonly Inline[])[]): string =>
	`<${tag}>${items.map(item => `<li>${inline(item)}</li>`).join('')}</${tag}>`;

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
	return clean(text)
		.replaceAll('&', '&amp;')
		.replaceAll('<', '&lt;')
		.replaceAll('>', '&gt;')
		.replaceAll('"', '&quot;')
		.replaceAll("'", '&#39;');
}
