import { expect, test } from 'vitest';
import { changesBetween } from '../../src/audit/compare.ts';
import { lastOfOtherAnswers, recordOf, recordWords, withRecord } from '../../src/audit/record.ts';
import { codesIn, codesOf } from '../../src/audit/record-codes.ts';
import { type AuditRecord, emptySheet } from '../../src/sheet/sheet.ts';
import { audited } from '../support/audited.ts';
import { demoSheets } from '../support/demo.ts';
import { testModel } from '../support/model.ts';

const record = (day: number, gap: string, verdict = 'fails'): AuditRecord => ({
	date: `2026-05-${String(day).padStart(2, '0')}`,
	rules: 'r',
	verdicts: [{ rule: 'a.b', subject: null, verdict }],
	numbers: {},
	answers: { 'ignition.gap': gap },
});

test('the last twenty audits are kept, the oldest dropped', () => {
	let audits: AuditRecord[] = [];
	for (let day = 1; day <= 25; day++) audits = withRecord(audits, record(day, String(day)));
	expect(audits.map(({ date }) => date)).toEqual(Array.from({ length: 20 }, (_, index) => record(index + 6, '').date));
});

test('an audit that says the same on another day is not kept twice', () => {
	const audits = [record(1, 'x')];
	expect(withRecord(audits, record(2, 'x'))).toEqual(audits);
	expect(withRecord(audits, record(2, 'y')).length).toBe(2);
});

test('a recheck compares with the last audit of other answers, however often the present one was looked at', () => {
	const [old, looked, again] = [record(1, 'x'), record(2, 'y'), record(3, 'y', 'holds')];
	expect(lastOfOtherAnswers([old, looked, again], record(4, 'y'))).toBe(old);
	expect(lastOfOtherAnswers([looked], record(4, 'y'))).toBe(looked);
	expect(lastOfOtherAnswers([], record(4, 'y'))).toBeNull();
});

test('what nobody knew and holds now is settled, in records of either make', () => {
	const line = { rule: 'a.b', subject: null };
	const kept = (was: string): AuditRecord[] => [
		record(1, 'x', was),
		{
			...record(1, 'x'),
			verdicts: [],
			held: was === 'holds' ? codesOf([line]) : '',
			undecided: was === 'holds' ? '' : codesOf([line]),
		},
	];
	const changes = (was: string, is: string) =>
		kept(was).map(before => changesBetween(before, [{ ...line, verdict: is }])[0]?.change);
	expect(changes('cannot-tell', 'holds')).toEqual(['settled', 'settled']);
	expect(changes('not-evaluated', 'holds')).toEqual(['settled', 'settled']);
	expect(changes('holds', 'cannot-tell')).toEqual(['no-longer-tellable', 'no-longer-tellable']);
	expect(changes('cannot-tell', 'does-not-apply')).toEqual([undefined, undefined]);
	expect(changes('holds', 'holds')).toEqual([undefined, undefined]);
});

test('no two lines of the rulebook stand for each other', () => {
	const ids = testModel().rulebook.rules.map(({ id }) => id);
	expect(codesIn(codesOf(ids.map(rule => ({ rule })))).size).toBe(ids.length);
});

test.each(demoSheets())('a record keeps what a comparison needs, in 12 kB at most: %s', (_, sheet) => {
	const text = JSON.stringify(recordOf(audited(sheet)));
	expect(text.length).toBeGreaterThan(1_000);
	expect(text.length).toBeLessThanOrEqual(12_000);
});

test('nothing known is not nothing to do', () => {
	expect(recordWords(recordOf(audited(emptySheet('new'))))).toMatch(/^\d{3} not known yet$/);
	expect(recordWords(record(1, 'x'))).toBe('1 to do');
	expect(recordWords(record(1, 'x', 'cannot-tell'))).toBe('1 not known yet');
	expect(recordWords({ ...record(1, 'x'), verdicts: [] })).toBe('nothing to do');
});
