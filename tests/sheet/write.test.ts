import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkSheet } from '../../src/sheet/check.ts';
import { parseSheet } from '../../src/sheet/parse.ts';
import { emptySheet, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { writeSheet } from '../../src/sheet/write.ts';
import { seed } from '../counts.ts';
import { anySheet } from '../quantities/any-sheet.ts';
import { buildSheet, testModel } from '../support/model.ts';

const { questions } = testModel().rulebook;

describe('a sheet written and read again is the same', () => {
	test('a full one, and an empty one', () => {
		for (const sheet of [buildSheet('boosted'), buildSheet('unboosted'), emptySheet('new')])
			expect(parseSheet(writeSheet(sheet))).toEqual(sheet);
	});

	test('any sheet that the checks take, checks and all', () => {
		fc.assert(
			fc.property(anySheet(questions, 'hard'), sheet => {
				const once = checkSheet(parseSheet(writeSheet(sheet)), questions).sheet;
				expect(once).toEqual(sheet);
				expect(writeSheet(once)).toBe(writeSheet(sheet));
			}),
			{ seed, numRuns: 50 },
		);
	});

	test('whatever stands in notes and in keys of others', () => {
		fc.assert(
			fc.property(fc.string({ unit: 'binary' }), fc.string(), fc.jsonValue(), (note, key, other) => {
				fc.pre(!(key in emptySheet('')) && key !== '__proto__');
				const answered = withAnswer(emptySheet(note), 'engine.bore', { known: 'not-known', note });
				const sheet: Sheet = { ...answered, [key]: other };
				expect(parseSheet(writeSheet(sheet))).toEqual(JSON.parse(JSON.stringify(sheet)));
			}),
			{ seed, numRuns: 1000 },
		);
	});
});

test('an answer stands on a line of its own, so does an audit', () => {
	const record = { date: '2026-05-01', rules: 'x', verdicts: [], numbers: {}, answers: {} };
	const text = writeSheet({ ...buildSheet('boosted'), audits: [record, record] });
	expect(text).toContain('\n      "bore": {"value":3.93,"unit":"in","known":"measured"},\n');
	expect(text.split('\n').filter(line => line.startsWith('    {"date"'))).toHaveLength(2);
	expect(text.endsWith('}\n')).toBe(true);
});

test('changing one answer changes one line', () => {
	const before = buildSheet('boosted');
	const after = withAnswer(before, 'ignition.gap', { value: 0.028, unit: 'in', known: 'measured' });
	const [was, is] = [before, after].map(sheet => writeSheet(sheet).split('\n')) as [string[], string[]];
	expect(is.filter((line, index) => line !== was[index])).toHaveLength(1);
	expect(is).toHaveLength(was.length);
});

test('what is undefined is left out, not written', () => {
	expect(parseSheet(writeSheet({ ...emptySheet('new'), later: undefined }))).toEqual(emptySheet('new'));
});
