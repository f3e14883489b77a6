import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { recordOf } from '../../src/audit/record.ts';
import { writtenWords } from '../../src/cli/sheet/written.ts';
import { emptySheet, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { writeSheet } from '../../src/sheet/write.ts';
import { audited } from '../support/audited.ts';
import { runCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';
import { buildSheet } from '../support/model.ts';

/** Without draws: how sure a verdict is does not matter here, and is most of the work. */
const day = ['--date', '2026-05-01', '--draws', '0'];
const wideGap = withAnswer(buildSheet('boosted'), 'ignition.gap', { value: 0.06, unit: 'in', known: 'measured' });

/** A sheet of one answer, for what does not hang on the build: the stages of a whole one take draws. */
const small = withAnswer(emptySheet('small'), 'ignition.gap', { value: 0.06, unit: 'in', known: 'measured' });

function sheetFile(sheet: Sheet = wideGap): string {
	const path = join(temporaryFolder(), 'mule.json');
	writeFileSync(path, writeSheet(sheet));
	return path;
}

describe('printing changes nothing, writing records', () => {
	test.each([[[]], [['--json']], [['--gate', 'tidy']]])('audit %j leaves the sheet alone', args => {
		const path = sheetFile(small);
		const before = readFileSync(path);
		runCommand(['audit', path, ...day, ...args]);
		expect(readFileSync(path).equals(before)).toBe(true);
	});

	test('--out records one audit, --no-record none, --record one without writing', () => {
		const path = sheetFile(small);
		const audits = () => JSON.parse(readFileSync(path, 'utf8')).audits.length;
		runCommand(['audit', path, ...day, '--out', `${path}.md`, '--no-record']);
		expect(audits()).toBe(0);
		runCommand(['audit', path, ...day, '--out', `${path}.md`]);
		expect(audits()).toBe(1);
		// What says the same is not recorded a second time.
		runCommand(['audit', path, ...day, '--record']);
		expect(audits()).toBe(1);
		writeFileSync(path, writeSheet({ ...small, audits: [] }));
		runCommand(['audit', path, ...day, '--record']);
		expect(audits()).toBe(1);
	});

	test('--out says in three lines what was written, what comes next, what changed', () => {
		const now = audited(wideGap);
		const words = (sheet: Sheet) =>
			writtenWords({ ...audited(sheet), sheet }, 'a.md', ['a-limits.svg', 'a-details.md'], recordOf(audited(sheet)));
		expect(words(wideGap)).toEqual([
			'Written: a.md, and beside it a-details.md and 1 picture.',
			expect.stringMatching(/^Next: before .*: \d+ to do/),
			'No earlier audit to compare with.',
		]);
		expect(words({ ...buildSheet('boosted'), audits: [recordOf(now)] })[2]).toMatch(/^Since 2026-05-01: settled \d+\./);
	});

	test('pictures lie beside the Markdown, under names that it shows', () => {
		const path = sheetFile();
		runCommand(['audit', path, ...day, '--out', `${path}.md`]);
		const pictures = readdirSync(join(path, '..')).filter(name => name.endsWith('.svg'));
		expect(pictures.length).toBe(4);
		const pages = readdirSync(join(path, '..')).filter(name => name.endsWith('.md'));
		const text = pages.map(name => readFileSync(join(path, '..', name), 'utf8')).join('\n');
		for (const picture of pictures) expect(text).toContain(`](${picture})`);
	});

	test.each(['html', 'json', 'csv'])('--out writes .%s', ending => {
		const path = sheetFile(small);
		expect(runCommand(['audit', path, ...day, '--out', `${path}.${ending}`]).status).toBe(0);
		expect(readFileSync(`${path}.${ending}`, 'utf8').length).toBeGreaterThan(200);
	});
});

describe('the gate', () => {
	test('a healthy build passes every gate', () => {
		const path = sheetFile(buildSheet('boosted'));
		expect(runCommand(['audit', path, ...day, '--gate', 'tidy']).status).toBe(0);
	});

	test('a gap too wide for the boost stops the boost, not what comes before it; the audit is printed all the same', () => {
		const path = sheetFile();
		expect(runCommand(['audit', path, ...day, '--gate', 'move']).status).toBe(0);
		const { status, out } = runCommand(['audit', path, ...day, '--gate', 'boost']);
		expect(status).toBe(1);
		expect(out).toContain('# Swap audit: boosted');
	});
});

describe('recheck', () => {
	test('says that there is nothing to compare with, on stderr, with status 0', () => {
		const { status, out, err } = runCommand(['recheck', sheetFile(small), '--json', '--no-record', ...day]);
		expect(err).toContain('Nothing to compare with');
		expect(JSON.parse(out).since).toBeNull();
		expect(status).toBe(0);
	});

	test('shows what is settled, by answers, and which figures moved', () => {
		const path = sheetFile();
		runCommand(['audit', path, ...day, '--record']);
		const recorded = JSON.parse(readFileSync(path, 'utf8'));
		recorded.answers.ignition.gap.value = 0.03;
		writeFileSync(path, JSON.stringify(recorded));
		const { since } = JSON.parse(runCommand(['recheck', path, '--json', ...day, '--date', '2026-05-08']).out);
		expect(since.date).toBe('2026-05-01');
		expect(since.changes).toContainEqual({
			rule: 'ignition.gap-too-wide',
			subject: null,
			change: 'settled',
			by: 'answers',
		});
		expect(
			since.changes.some(
				({ rule, change }: { rule: string; change: string }) => rule.startsWith('injectors.') && change !== 'still',
			),
		).toBe(false);
		expect(since.numbers.map(({ name }: { name: string }) => name)).toContain('ignition.spark_margin');
	});

	test('--since takes a day, an audit as JSON, or another sheet; anything else ends with 2', () => {
		const path = sheetFile(small);
		runCommand(['audit', path, ...day, '--out', `${path}.old.json`]);
		for (const since of ['2026-05-02', `${path}.old.json`, path]) {
			const { out, status } = runCommand(['recheck', path, '--since', since, '--json', '--no-record', ...day]);
			expect(status).toBe(0);
			expect(JSON.parse(out).since.date).toBe('2026-05-01');
		}
		writeFileSync(`${path}.none.json`, '{"format": "swap-audit/audit", "findings": 5}');
		const { err, status } = runCommand(['recheck', path, '--since', `${path}.none.json`]);
		expect(err).toMatch(/^--since: found /);
		expect(status).toBe(2);
	});
});

describe('streams', () => {
	test('--lines: one audit a line; a bad line is reported by number, the rest goes on, status 2 at the end', () => {
		const good = JSON.stringify(wideGap);
		const { out, status } = runCommand(['audit', '--lines', '--date', '2026-05-01'], {
			input: `${good}\n{"format": 1}\n${good}\n`,
		});
		const lines = out
			.trimEnd()
			.split('\n')
			.map(line => JSON.parse(line));
		expect(lines.map(line => line.sheet ?? line.line)).toEqual(['boosted', 2, 'boosted']);
		expect(lines[1].error).toContain('format');
		expect(status).toBe(2);
	});

	test('--lines: a sheet gets the audit that it gets alone, whatever came before it', () => {
		const sheets = [wideGap, buildSheet('unboosted'), { ...wideGap, units: 'metric' }, emptySheet('nothing'), wideGap];
		const input = sheets.map(sheet => JSON.stringify(sheet)).join('\n');
		const { out } = runCommand(['audit', '--lines', '--date', '2026-05-01'], { input });
		const alone = sheets.map(
			sheet => runCommand(['audit', '--lines', '--date', '2026-05-01'], { input: JSON.stringify(sheet) }).out,
		);
		expect(
			out
				.trimEnd()
				.split('\n')
				.map(line => JSON.parse(line)),
		).toEqual(alone.map(text => JSON.parse(text)));
	});

	test('--lines: no line, however broken, stops the rest', () => {
		const broken = [
			'',
			'{',
			'[]',
			'null',
			'\u0000',
			'['.repeat(10_000),
			'{"__proto__": {}}',
			'\ufeff',
			`"${'x'.repeat(1e5)}"`,
		];
		const { out, err, status } = runCommand(['audit', '--lines', '--date', '2026-05-01'], {
			input: `${broken.join('\n')}\n${JSON.stringify(wideGap)}`,
		});
		const lines = out
			.trimEnd()
			.split('\n')
			.map(line => JSON.parse(line));
		expect(lines.map(line => line.sheet ?? line.line)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 'boosted']);
		for (const { error } of lines.slice(0, -1)) expect(error.length).toBeLessThan(1000);
		expect([status, err]).toEqual([2, '']);
	});

	test('--lines: many lines, judged by several threads, come in their order, each as it comes alone', () => {
		const good = JSON.stringify(emptySheet('nothing'));
		const lines = Array.from({ length: 60 }, (_, at) => (at % 20 === 19 ? good : `{"format": ${at}}`));
		const args = ['audit', '--lines', '--date', '2026-05-01', '--units', 'metric'];
		const { out, err, status } = runCommand(args, { input: lines.join('\n') });
		const alone = runCommand(args, { input: good }).out;
		const printed = out.split(/(?<=\n)/);
		expect(printed.length).toBe(60);
		for (const [at, text] of printed.entries()) {
			if (at % 20 === 19) expect(text).toBe(alone);
			else expect(JSON.parse(text)).toMatchObject({ line: at + 1 });
		}
		expect([status, err]).toEqual([2, '']);
	});

	test('the bare command off a terminal says what to use instead', () => {
		const { status, err } = runCommand([], { env: { TERM: 'xterm' } });
		expect(err).toContain('--plain');
		expect(status).toBe(2);
	});
});

test('limits, next and readings print with --json that array of the audit alone', () => {
	const path = sheetFile();
	const audit = JSON.parse(runCommand(['audit', path, '--json', '--date', '2026-05-01']).out);
	for (const part of ['limits', 'next', 'readings'])
		expect(JSON.parse(runCommand([part, path, '--json']).out), part).toEqual(audit[part]);
});
