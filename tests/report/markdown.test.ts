import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Block, heading, paragraph, strong } from '../../src/report/document.ts';
import { printMarkdown } from '../../src/report/markdown.ts';
import { seed } from '../counts.ts';
import { nodes, readMarkdown, words } from '../support/tree.ts';

const print = (...blocks: Block[]) => printMarkdown({ title: '', blocks }, 'mule');
const long = 'A sentence about a hose and a clamp that somebody should look at with a lamp. '.repeat(5).trim();

describe('Markdown', () => {
	test('what belongs to a task is a list inside it, not more of its text', () => {
		const tree = readMarkdown(
			print(
				{ is: 'task', text: [strong('Hose. '), long], details: [['Cut it.'], [strong('Why: '), long]] },
				{ is: 'task', text: ['Clamp.'], details: [] },
			),
		);
		const [list] = nodes(tree, 'list');
		expect(list?.children?.map(({ checked }) => checked)).toEqual([false, false]);
		const [inner] = nodes(list!.children![0]!, 'list');
		expect(inner?.children?.map(words).map(text => text.slice(0, 7))).toEqual(['Cut it.', 'Why: A ']);
	});

	test('tasks of one line stand close, one with something below it stands apart', () => {
		const close: Block = { is: 'task', text: ['Look.'], details: [] };
		const wide: Block = { is: 'task', text: ['Mend.'], details: [['Cut.']] };
		expect(print(wide, close, close)).toBe('- [ ] Mend.\n    - Cut.\n\n- [ ] Look.\n- [ ] Look.\n');
	});

	test('lines stay short and continue under their text', () => {
		const steps: Block = { is: 'steps', items: Array.from({ length: 10 }, () => [long]) };
		const text = print(paragraph(long), { is: 'items', items: [[long]] }, steps);
		for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
		expect(text).toMatch(/^10\. .*\n {4}\S/m);
		expect(text).toMatch(/^9\. .*\n {3}\S/m);
		expect(nodes(readMarkdown(text), 'listItem').length).toBe(11);
	});

	test('a line is broken behind the last word that fits, unless the next one would be a mark there', () => {
		const word = fc.oneof(
			{ weight: 6, arbitrary: fc.integer({ min: 1, max: 14 }).map(length => 'x'.repeat(length)) },
			fc.constantFrom('-', '#', '12.', '3)', '+x', '12.5', 'y'.repeat(120)),
		);
		const isMark = (next: string) => /^(-|#|\+|\d+[.)]$)/.test(next);
		fc.assert(
			fc.property(fc.array(word, { maxLength: 80, size: 'max' }), fc.constantFrom(' ', '  '), (words, gap) => {
				let [line, lines] = ['x', ''];
				for (const next of words) {
					if (line.length + 1 + next.length > 100 && !isMark(next)) [lines, line] = [`${lines}${line}\n`, next];
					else line += ` ${next}`;
				}
				expect(print(paragraph(['x', ...words].join(gap)))).toBe(`${lines}${line}\n`);
			}),
			{ seed },
		);
	});

	test('marks are escaped where they would be marks, and nowhere else', () => {
		expect(print(paragraph('- no list'))).toBe('\\- no list\n');
		expect(print(paragraph('1999.'))).toBe('1999\\.\n');
		expect(print(paragraph({ code: 'engine.year' }, ' 1999. -8 % and +3 #4'))).toBe(
			'`engine.year` 1999. -8 % and +3 #4\n',
		);
		expect(print(paragraph('engine_year'))).toBe('engine_year\n');
	});

	test('bold of nothing leaves no marks behind', () => {
		expect(print(paragraph(strong('\u200b'), 'x'))).toBe('x\n');
		expect(print(paragraph(strong(' a '), 'x'))).toBe(' **a** x\n');
	});

	test('a figure is named after the file beside it, and left out without one', () => {
		const figure: Block = { is: 'figure', name: 'limits', title: 'What [gives] out', svg: '<svg/>' };
		expect(print(heading(2, 'A'), figure)).toBe('## A\n\n![What \\[gives\\] out](mule-limits.svg)\n');
		expect(printMarkdown({ title: '', blocks: [heading(2, 'A'), figure] }, null)).toBe('## A\n');
	});
});
