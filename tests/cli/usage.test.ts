import { describe, expect, test } from 'vitest';
import { writeSheet } from '../../src/sheet/write.ts';
import { runCommand } from '../support/command.ts';
import { buildSheet } from '../support/model.ts';

const sheet = writeSheet(buildSheet('boosted'));

describe('wrong usage ends with 2 and one clear line', () => {
	test.each([
		[['nonsense'], /nonsense/],
		[['audit'], /audit: name a sheet/],
		[['audit', '-', '--units', 'cubits'], /--units: found "cubits"; accepted: us, metric/],
		[['audit', '-', '--gate', 'tuesday'], /--gate: found "tuesday"; accepted: crank, fire, move, boost, tidy/],
		[['audit', '-', '--date', '2026-02-30'], /--date: found "2026-02-30"/],
		[['audit', '-', '--draws', '20000'], /--draws: found "20000"; accepted: a whole number, 0 to 10000/],
		[['audit', '-', '--out', 'x.docx'], /--out: found "x.docx"/],
		[['audit', '-', '--cubits'], /--cubits/],
		[['audit', 'no/such/sheet.json'], /no\/such\/sheet\.json/],
		[['audit', '..'], /\.\./],
		[['rules', 'show', 'no.such-rule'], /no\.such-rule/],
		[['quantities', 'no.such'], /no\.such/],
	])('%j', (args, message) => {
		const { status, out, err } = runCommand(args, { input: sheet });
		expect(err).toMatch(message);
		expect(err).not.toMatch(/\n\s+at .*:\d+:\d+/);
		expect(out).toBe('');
		expect(status).toBe(2);
	});
});

test('--version prints the version alone', () => {
	const { status, out } = runCommand(['--version']);
	expect(out).toMatch(/^\d+\.\d+\.\d+\n$/);
	expect(status).toBe(0);
});

test('--help names every command of the contract', () => {
	const { out } = runCommand(['--help']);
	for (const name of ['audit', 'recheck', 'limits', 'next', 'readings', 'rules', 'questions', 'quantities']) {
		expect(out).toContain(name);
	}
});

test('quantities prints formula, range and source of every id', () => {
	const rows = JSON.parse(runCommand(['quantities', '--json']).out);
	expect(rows.length).toBeGreaterThan(90);
	for (const row of rows) {
		expect(row.formula, row.id).not.toBe('');
		expect(row.source.length, row.id).toBeGreaterThan(0);
	}
});
