import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { composeAudit } from '../../src/report/compose/compose.ts';
import { printCsv } from '../../src/report/csv.ts';
import type { Document } from '../../src/report/document.ts';
import { printHtml } from '../../src/report/html.ts';
import { printJson } from '../../src/report/json.ts';
import { printMarkdown } from '../../src/report/markdown.ts';
import { renderAudit } from '../../src/report/render.ts';
import { sanitize } from '../../src/text/sanitize.ts';
import { lines } from '../../src/tui/text.ts';
import { counts, seed } from '../counts.ts';
import { audited, brokenBuild } from '../support/audited.ts';
import { sha256 } from '../support/model.ts';
import { htmlShape, markdownShape, readHtml, readMarkdown } from '../support/tree.ts';

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
		{ is: 'items', items: [[{ code: text }, text]], small: true },
		{ is: 'figure', name: 'x', title: text, svg: '<svg></svg>' },
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

const shapeOfMarkdown = (text: string) => markdownShape(readMarkdown(text));
const shapeOfHtml = (text: string) => htmlShape(readHtml(text));

/** What would be nothing at all on paper leaves its block out: the shape is compared for text with a letter in it. */
const visible = hostile.map(text => `q${text}q`);

/** What a terminal obeys, or what turns the writing. */
const obeyed = /[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;

describe('free text cannot break', { timeout: 3_600_000 }, () => {
	test('Markdown', () => {
		const wanted = shapeOfMarkdown(printMarkdown(withText('qwordq'), 'x'));
		fc.assert(
			fc.property(visible, text => {
				expect(shapeOfMarkdown(printMarkdown(withText(text), 'x'))).toEqual(wanted);
			}),
			{ seed, numRuns: counts.hostile },
		);
	});

	test('Markdown, with the text at the very start and end of a line', () => {
		fc.assert(
			fc.property(hostile, text => {
				const made = shapeOfMarkdown(printMarkdown({ title: '', blocks: [{ is: 'paragraph', text: [text] }] }, null));
				expect([['root'], ['root', ['paragraph']]]).toContainEqual(made);
			}),
			{ seed, numRuns: counts.hostile },
		);
	});

	test('HTML', () => {
		const wanted = shapeOfHtml(printHtml(withText('qwordq'), sha256));
		fc.assert(
			fc.property(visible, text => {
				expect(shapeOfHtml(printHtml(withText(text), sha256))).toEqual(wanted);
			}),
			{ seed, numRuns: counts.hostile },
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

	test('JSON, on a terminal as well', () => {
		fc.assert(
			fc.property(hostile, text => {
				const printed = printJson({ [text]: [text] });
				expect(JSON.parse(printed)).toEqual({ [text]: [text] });
				expect(printed).not.toMatch(obeyed);
			}),
			{ seed, numRuns: counts.hostile },
		);
	});

	test('the terminal: no control bytes, no marks that turn the writing', () => {
		fc.assert(
			fc.property(hostile, text => {
				const shown = [sanitize(text), ...lines(text, 40).map(line => line.text)].join('');
				expect(shown).not.toMatch(obeyed);
			}),
			{ seed, numRuns: counts.hostile },
		);
	});
});

describe('a whole audit, with hostile text in its name, notes, loads and circuits', () => {
	const plain = composeAudit(audited(brokenBuild('qwordq')));
	const wanted = {
		markdown: shapeOfMarkdown(printMarkdown(plain, 'x', 'x-details.md')),
		html: shapeOfHtml(printHtml(plain, sha256)),
	};
	const texts = fc.sample(visible, { seed, numRuns: counts.hostile / 300 });

	test.each(texts.map(text => [text]))('keeps its shape with %j', text => {
		const assessment = audited(brokenBuild(text));
		const markdown = renderAudit(assessment, 'md', '../x y/\u0000z');
		const names = Object.keys(markdown.attachments);
		for (const name of names) expect(name).toMatch(/^[A-Za-z0-9_][A-Za-z0-9._-]*\.(svg|md)$/);
		expect(shapeOfMarkdown(markdown.text)).toEqual(wanted.markdown);
		expect(shapeOfHtml(renderAudit(assessment, 'html', '').text)).toEqual(wanted.html);
		expect(markdown.text).not.toMatch(/(?!\n)[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
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
