import fc from 'fast-check';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { gfmFromMarkdown } from 'mdast-util-gfm';
import { gfm } from 'micromark-extension-gfm';
import { type DefaultTreeAdapterTypes, parse } from 'parse5';
import { describe, expect, test } from 'vitest';
import { clean } from '../../src/report/clean.ts';
import { printCsv } from '../../src/report/csv.ts';
import type { Document } from '../../src/report/document.ts';
import { printHtml } from '../../src/report/html.ts';
import { printMarkdown } from '../../src/report/markdown.ts';
import { lines } from '../../src/tui/text.ts';
import { counts, seed } from '../counts.ts';

// Free text of a sheet (names, notes, loads, circuits) stands in every kind of block. Whatever it holds, the parsed
// document must have the shape that it has with a harmless word in its place.

const withText = (text: string): Document => ({
	title: text,
	blocks: [
		{ is: 'heading', level: 2, text: `Audit of ${text}` },
		{ is: 'paragraph', text: [text] },
		{ is: 'paragraph', text: ['before ', { strong: text }, ' after ', text, ' end'] },
		{ is: 'paragraph', text: ['id ', { code: text }] },
		{ is: 'task', text: [{ strong: text }, text], details: [[text], ['Note: ', text]] },
		{ is: 'items', items: [[text], ['x ', text]] },
		{ is: 'steps', items: [[text]] },
		{ is: 'table', head: ['a', text], rows: [[text, 'b']] },
	],
});

const nasty = fc.constantFrom(
	'\u001b]8;;x\u0007',
	'\u001b[2J',
	'<script>alert(1)</script>',
	'</td>',
	'](javascript:x)',
	'![x](y)',
	'[x][y]',
	'<!--',
	'-->',
	'&lt;',
	'&#0;',
	'**',
	'__',
	'~~',
	'`',
	'```',
	'|',
	'\n',
	'\r\n',
	'\u2028',
	'\n\n# h',
	'\n- x',
	'\n1. x',
	'---',
	'===',
	'> q',
	'    code',
	'\\',
	'\u202e',
	'\u200b',
	'\ufeff',
	'\ud800',
	'http://x.example',
	'www.x.example',
	'a@b.example',
	'[ ]',
	'[x]',
	'<a href="x">',
	'"',
	"'",
	'=1+1',
	'@x',
	'\u0000',
	'\t',
	':-:',
	'$x$',
	'<br/>',
	'&amp',
	'*a*',
	'_a_',
);
const hostile = fc
	.array(
		fc.oneof(
			{ weight: 3, arbitrary: nasty },
			fc.string({ unit: 'binary', maxLength: 6 }),
			fc.constantFrom('word', ' ', 'a b'),
		),
		{ minLength: 1, maxLength: 6 },
	)
	.map(parts => parts.join(''));

interface Node {
	readonly type: string;
	readonly children?: readonly Node[];
}

/** The shape of a tree: kinds of nodes, text and code (which only ids stand in) left out. */
const shape = ({ type, children = [] }: Node): unknown => [
	type,
	...children.filter(child => child.type !== 'text' && child.type !== 'inlineCode').map(shape),
];
const markdownShape = (text: string) =>
	shape(fromMarkdown(text, { extensions: [gfm()], mdastExtensions: [gfmFromMarkdown()] }) as Node);

type Html = DefaultTreeAdapterTypes.Node;
const htmlShape = (node: Html): unknown => [
	node.nodeName,
	...('attrs' in node ? node.attrs.map(({ name }) => name) : []),
	...('childNodes' in node ? node.childNodes.filter(child => child.nodeName !== '#text').map(htmlShape) : []),
];

/** What would be nothing at all on paper leaves its block out: the shape is compared for text with a letter in it. */
const visible = hostile.map(text => `q${text}q`);

describe('free text cannot break', () => {
	test('Markdown', () => {
		const wanted = markdownShape(printMarkdown(withText('qwordq'), 'x'));
		fc.assert(
			fc.property(visible, text => {
				expect(markdownShape(printMarkdown(withText(text), 'x'))).toEqual(wanted);
			}),
			{ seed, numRuns: counts.hostile / 3 },
		);
	});

	test('Markdown, with the text at the very start and end of a line', () => {
		fc.assert(
			fc.property(hostile, text => {
				const made = markdownShape(printMarkdown({ title: '', blocks: [{ is: 'paragraph', text: [text] }] }, null));
				expect([['root'], ['root', ['paragraph']]]).toContainEqual(made);
			}),
			{ seed, numRuns: counts.hostile / 3 },
		);
	});

	test('HTML', () => {
		const wanted = htmlShape(parse(printHtml(withText('qwordq'))));
		fc.assert(
			fc.property(visible, text => {
				expect(htmlShape(parse(printHtml(withText(text))))).toEqual(wanted);
			}),
			{ seed, numRuns: counts.hostile / 3 },
		);
	});

	test('CSV: two rows of two cells stay two rows of two cells, and none is a formula', () => {
		fc.assert(
			fc.property(hostile, text => {
				const rows = readCsv(
					printCsv([
						[text, 'b'],
						['c', text],
					]),
				);
				expect(rows.map(row => row.length)).toEqual([2, 2]);
				expect(rows[0]![0]).not.toMatch(/^[=+\-@]/);
			}),
			{ seed, numRuns: counts.hostile },
		);
	});

	test('the terminal: no control bytes, no marks that turn the writing', () => {
		fc.assert(
			fc.property(hostile, text => {
				const shown = [clean(text), ...lines(text, 40).map(line => line.text)].join('');
				expect(shown).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
			}),
			{ seed, numRuns: counts.hostile },
		);
	});
});

/** A reader of RFC 4180, small and strict. */
function readCsv(text: string): string[][] {
	const rows: string[][] = [[]];
	let cell = '';
	let quoted = false;
	for (let at = 0; at < text.length; at++) {
		const sign = text[at]!;
		if (quoted) {
			if (sign !== '"') cell += sign;
			else if (text[at + 1] === '"') cell += text[++at];
			else quoted = false;
		} else if (sign === '"') quoted = true;
		else if (sign === ',' || sign === '\r') {
			rows.at(-1)!.push(cell);
			cell = '';
			if (sign === '\r') {
				at++;
				rows.push([]);
			}
		} else cell += sign;
	}
	return rows.slice(0, -1);
}
