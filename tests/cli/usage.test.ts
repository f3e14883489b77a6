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
		[
			['audit', '-', '--gate', 'fire', '--gate', 'crank'],
			/--gate: found it twice, fire and crank; accepted: one stage/,
		],
		[['audit', '--lines', '--gate', 'fire'], /audit --lines takes no --gate/],
		[['audit', '--lines', '--out', 'a.md'], /audit --lines takes no --out/],
		[['audit', '--lines', '--draws', '9'], /audit --lines takes no --draws/],
		[['audit', '--lines', '--record'], /audit --lines takes no --record/],
		[['audit', '-', '--gate', 'tuesday'], /--gate: found "tuesday"; accepted: install, crank, fire, move, boost, tidy/],
		[['audit', '-', '--date', '2026-02-30'], /--date: found "2026-02-30"/],
		[['audit', '-', '--draws', '20000'], /--draws: found "20000"; accepted: a whole number, 0 to 10000/],
		[['audit', '-', '--out', 'x.docx'], /--out: found "x.docx"/],
		[['audit', '-', '--cubits'], /--cubits/],
		[['adit', 'car.json'], /unknown command 'adit'\n\(Did you mean audit\?\)\nSee: swap-audit --help/],
		[['./car.json'], /a command comes first: .*swap-audit audit \.\/car\.json/],
		[
			['audit', 'no/such/sheet.json'],
			/no\/such\/sheet\.json: .* To start it: swap-audit interview no\/such\/sheet\.json/,
		],
		[['audit', 'shed'], /No sheet is named shed .*swap-audit interview shed/],
		[['audit', '-', '--out', 'no/such/audit.md'], /--out: there is no folder "no\/such"; make it first/],
		[['recheck', '-', '--since', '2026-02-30'], /--since: found "2026-02-30"/],
		[['interview', 'no/such/car.json', '--plain'], /there is no folder ".*no\/such"; make it first/],
		[['completion', 'tcsh'], /value 'tcsh' is invalid .*bash, zsh, fish/],
		[['rules', 'show', 'ignition.gap'], /accepted: the id of a rule, like ignition\.gap-too-wide/],
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

test('a sheet that cannot be used is reported by its name, with all that is wrong', () => {
	const { status, err } = runCommand(['audit', '-'], { input: '{"version": 1}' });
	expect(err).toMatch(/^standard input cannot be used as it is; nothing was changed\.\n/);
	expect(err).toMatch(/^format: found nothing/m);
	expect(status).toBe(2);
});

test('--version prints the version alone', () => {
	const { status, out } = runCommand(['--version']);
	expect(out).toMatch(/^\d+\.\d+\.\d+\n$/);
	expect(status).toBe(0);
});

test('help prints the words of the trade, all or one, also by a word that is not used', () => {
	expect(runCommand(['help', 'words']).out).toMatch(/^transmission: manual or automatic/m);
	for (const said of ['gasoline', 'petrol'])
		expect(runCommand(['help', 'words', said]).out).toMatch(/^gasoline: .*\n {2}not: petrol\n$/);
	expect(runCommand(['help', 'audit']).out).toMatch(/^Usage: swap-audit audit/);
});

test.each([
	[['help', 'words', 'gearbx'], /found "gearbx"; accepted: a word of the list, like transmission/],
	[['help', 'foo'], /found "foo"; accepted: interview, .*words/],
	[['rules', 'show', 'engine.compresion-uneven'], /like engine\.compression-uneven/],
])('%j is refused with what comes near', (args, expected) => {
	const { status, err, out } = runCommand(args as string[]);
	expect([status, out]).toEqual([2, '']);
	expect(err.trimEnd()).toMatch(expected);
	expect(err.trimEnd()).not.toContain('\n');
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
		// A list, a yes or no, words have no unit, and no range.
		expect(row.range === null, row.id).toBe(row.unit === null);
	}
});
