import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseSheet } from '../../src/sheet/parse.ts';
import { emptySheet, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { writeSheet } from '../../src/sheet/write.ts';
import { seed } from '../counts.ts';
import { buildSheet } from '../support/model.ts';

test('a sheet written and read again is the same', () => {
	for (const build of ['boosted', 'unboosted'] as const)
		expect(parseSheet(writeSheet(buildSheet(build)))).toEqual(buildSheet(build));
	expect(parseSheet(writeSheet(emptySheet('new')))).toEqual(emptySheet('new'));
});

test('whatever stands in notes and in keys of others', () => {
	fc.assert(
		fc.property(fc.string(), fc.jsonValue(), (note, other) => {
			const sheet: Sheet = { ...withAnswer(emptySheet(note), 'engine.bore', { known: 'not-known', note }), other };
			expect(parseSheet(writeSheet(sheet))).toEqual(JSON.parse(JSON.stringify(sheet)));
		}),
		{ seed },
	);
});

test('an answer stands on a line of its own', () => {
	expect(writeSheet(buildSheet('boosted'))).toContain('\n      "bore": {"value":4,"unit":"in","known":"measured"},\n');
});
