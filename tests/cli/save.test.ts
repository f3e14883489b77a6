import { expect, test } from 'vitest';
import { textWithin } from '../../src/cli/sheet/sheet.ts';
import { checkSheet } from '../../src/sheet/check.ts';
import { parseSheet } from '../../src/sheet/parse.ts';
import { emptySheet, longestName, withAnswer } from '../../src/sheet/sheet.ts';
import { testModel } from '../support/model.ts';

const record = (date: string) => ({ date, rules: 'x', name: 'mule', verdicts: [], numbers: {}, answers: {} });
const sheet = withAnswer(emptySheet('mule'), 'engine.bore', { value: 4, unit: 'in', known: 'measured' });

test('audits on record never keep an answer from being saved: the oldest go first, and only as many as must', () => {
	const audits = Array.from({ length: 40 }, (_, day) => record(`2026-01-${day + 10}`));
	const full = { ...sheet, audits };
	const text = textWithin(1500, full);
	expect(text.length).toBeLessThanOrEqual(1500);
	const kept = parseSheet(text) as typeof full;
	expect(kept.answers).toEqual(sheet.answers);
	expect(kept.audits.length).toBeGreaterThan(3);
	expect(kept.audits).toEqual(audits.slice(-kept.audits.length));
	expect((parseSheet(textWithin(1e6, full)) as typeof full).audits).toEqual(audits);
	// What is too long without any is said by whoever saves.
	expect((parseSheet(textWithin(10, full)) as typeof full).audits).toEqual([]);
});

test('a sheet named after a file with a very long name can be read back', () => {
	for (const name of ['m'.repeat(205), `${'m'.repeat(longestName - 1)}\u{1f600}`]) {
		const read = checkSheet(parseSheet(JSON.stringify(emptySheet(name))), testModel().rulebook.questions);
		expect(name.startsWith(read.sheet.name)).toBe(true);
	}
});
