import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { runCommand, startCommand } from '../support/command.ts';
import { demoLog } from '../support/demo-log.ts';
import { temporaryFolder } from '../support/folder.ts';

const demo = fileURLToPath(new URL('../../demo/', import.meta.url));
const sheets = readdirSync(demo).filter(name => name.endsWith('.sheet.json'));

/** Numbers to ten digits: the last ones may differ between versions of the engine that runs this. */
const rounded = (text: string): unknown =>
	JSON.parse(text, (_, value) => (typeof value === 'number' ? Number(value.toPrecision(10)) : value));

/** Formats that are written, and what else the same run is asked for: JSON is printed too; no draw shows in a worksheet. */
const written = [
	['md', ['--json']],
	['html', []],
	['csv', ['--draws', '0']],
] as const;

describe('the audits in demo/ are what the program writes (else: npm run demo -- --write)', () => {
	test.each(sheets.flatMap(sheet => written.map(([ending, flags]) => [sheet, ending, flags] as const)))(
		'%s as .%s %j',
		(sheet, ending, flags) => {
			const folder = temporaryFolder();
			const audit = sheet.replace('.sheet.json', '.audit');
			const judge = sheet.startsWith('after') ? 'recheck' : 'audit';
			const path = join(folder, `${audit}.${ending}`);
			const day = ['--no-record', '--date', '2026-04-01'];
			const { status, out, err } = runCommand([judge, join(demo, sheet), '--out', path, ...day, ...flags]);
			expect(err).toMatch(/^Written: /);
			expect(status).toBe(0);
			for (const name of readdirSync(folder))
				expect(readFileSync(join(folder, name), 'utf8'), name).toBe(readFileSync(join(demo, name), 'utf8'));
			if (ending === 'md') expect(rounded(out)).toEqual(rounded(readFileSync(join(demo, `${audit}.json`), 'utf8')));
			else expect(out).toBe('');
		},
	);
});

describe('the plan of the demo plugs is what the program writes', () => {
	test.each(['md', 'html', 'csv', 'json'])('as .%s', ending => {
		const name = `half-finished.pins.${ending}`;
		const out = join(temporaryFolder(), name);
		const { status, err } = runCommand([
			'pins',
			join(demo, 'half-finished.sheet.json'),
			'--out',
			out,
			'--date',
			'2026-04-01',
		]);
		expect(err).toBe('');
		expect(status).toBe(0);
		expect(readFileSync(out, 'utf8')).toBe(readFileSync(join(demo, name), 'utf8'));
	});

	test('one meeting burns, one kills, two wires move, and the keep-alive is missing', () => {
		const { plugs, counts, findings } = JSON.parse(readFileSync(join(demo, 'half-finished.pins.json'), 'utf8'));
		const met = (word: string) =>
			plugs.flatMap((plug: { rows: { meeting: string }[] }) => plug.rows.filter(({ meeting }) => meeting === word))
				.length;
		expect([met('burns'), met('kills'), counts.move]).toEqual([1, 1, 2]);
		const fails = (rule: string) =>
			findings.filter(
				(finding: { rule: string; verdict: string }) => finding.rule === rule && finding.verdict === 'fails',
			);
		expect(fails('pins.required-missing').map(({ subject }: { subject: string }) => subject)).toEqual(['keep-alive']);
		expect(fails('pins.moved')).toHaveLength(2);
	});
});

describe('the log of the demo', () => {
	const log = join(demo, 'after-changes.log.csv');

	test('is the invented drive that the simulator makes, and says so', () => {
		expect(readFileSync(log, 'utf8')).toBe(demoLog());
		expect(demoLog()).toMatch(/^# Invented /);
	});

	test('is judged as its report in demo/ says', () => {
		const out = join(temporaryFolder(), 'after-changes.log.md');
		const sheet = join(demo, 'after-changes.sheet.json');
		const { status, err } = runCommand(['log', sheet, log, '--out', out, '--date', '2026-04-01']);
		expect(err).toBe('');
		expect(status).toBe(0);
		for (const name of readdirSync(dirname(out)))
			expect(readFileSync(join(dirname(out), name), 'utf8'), name).toBe(readFileSync(join(demo, name), 'utf8'));
	});
});

test('the same bytes whatever the place, the language and the time zone', () => {
	const path = join(demo, sheets[0]!);
	const run = (env: Record<string, string>) => startCommand(['audit', path, '--date', '2026-04-01'], { env }).out;
	const first = run({ TZ: 'UTC', LANG: 'C' });
	expect(first.length).toBeGreaterThan(10_000);
	expect(run({ TZ: 'Asia/Tokyo', LANG: 'de_DE.UTF-8', LC_ALL: 'tr_TR.UTF-8', COLUMNS: '40' })).toBe(first);
});
