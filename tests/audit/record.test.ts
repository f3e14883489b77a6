import { expect, test } from 'vitest';
import { changesBetween } from '../../src/audit/compare.ts';
import { lastOfOtherAnswers, withRecord } from '../../src/audit/record.ts';
import type { AuditRecord } from '../../src/sheet/sheet.ts';

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

test('what nobody knew and holds now is settled', () => {
	const change = (was: string, is: string) => changesBetween(record(1, 'x', was), record(2, 'y', is))[0]?.change;
	expect(change('cannot-tell', 'holds')).toBe('settled');
	expect(change('not-evaluated', 'holds')).toBe('settled');
	expect(change('cannot-tell', 'does-not-apply')).toBeUndefined();
	expect(change('holds', 'holds')).toBeUndefined();
});
