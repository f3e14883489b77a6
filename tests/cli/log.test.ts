import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { writeSheet } from '../../src/sheet/write.ts';
import { runCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';
import { buildSheet } from '../support/model.ts';

const sheet = writeSheet(buildSheet('boosted'));
const rows = Array.from(
	{ length: 600 },
	(_, row) => `${row / 10},${row < 50 ? 0 : 800 + (row % 7)},${row < 50 ? 100 : 35},90`,
);
const table = ['Time (s),RPM,MAP (kPa),ECT (degC),APP (%)', ...rows].join('\n');
const at = (name: string, content: string | Uint8Array): string => {
	const path = join(temporaryFolder(), name);
	writeFileSync(path, content);
	return path;
};
const run = (path: string, ...flags: string[]) =>
	runCommand(['log', '-', path, '--date', '2026-05-01', ...flags], { input: sheet });
/** How sure a verdict is changes neither the keys nor the files, and is most of the work. */
const undrawn = ['--draws', '0'];

describe('swap-audit log', () => {
	test('prints what the engine did and how each column was read', () => {
		const { status, out, err } = run(at('drive.csv', table));
		expect(err).toBe('');
		expect(status).toBe(0);
		expect(out).toMatch(/^# Log of .*: drive\.csv/);
		expect(out).toMatch(/600 rows over 1 min 0 s, .* 0 pulls/);
		expect(out).toMatch(/`coolant_temp` ECT \(degC\), in degC, by its header/);
	});

	test('as JSON, the same plain and packed, with every key of the format', () => {
		const plain = JSON.parse(run(at('drive.csv', table), '--json', ...undrawn).out);
		const packed = JSON.parse(run(at('drive.csv.gz', gzipSync(table)), '--json', ...undrawn).out);
		const { file, ...rest } = plain;
		expect({ ...packed, file: null }).toEqual({ ...rest, file: null });
		expect(Object.keys(plain)).toEqual([
			...['format', 'version', 'sheet', 'date', 'tool', 'rules', 'file', 'channels', 'unused', 'episodes'],
			...['quantities', 'findings', 'answers', 'fit', 'limits', 'boost_steps', 'boost_steps_refused', 'notes'],
		]);
		expect(file).toMatchObject({ name: 'drive.csv', bytes: table.length, rows: 600, unread: 0, seconds: 59.9 });
		expect(file.sha256).toMatch(/^[0-9a-f]{64}$/);
		expect(plain.channels[1]).toEqual({
			channel: 'engine_speed',
			header: 'RPM',
			unit: 'rpm',
			by: 'header',
			samples: expect.any(Number),
			low: 0,
			high: 806,
			lag: null,
		});
		expect(plain.episodes.map(({ kind }: { kind: string }) => kind)).toContain('key-on');
	});

	test('the same where a thread of its own reads it, as a large file is, with the same words for what cannot be read', () => {
		const long = [
			table,
			...Array.from({ length: 110_000 }, (_, row) => `${60 + row / 10},${800 + (row % 7)},35.5,90.0`),
		];
		long[60_000] = '6060,8x1,35.5,90.0';
		const large = `${long.join('\n')}\n`;
		expect(large.length).toBeGreaterThan(2 * 1024 ** 2);
		const judged = JSON.parse(run(at('drive.csv', large), '--json', ...undrawn).out);
		const packed = JSON.parse(run(at('drive.csv.gz', gzipSync(large)), '--json', ...undrawn).out);
		expect(judged.file).toMatchObject({ bytes: large.length, rows: 110_600, unread: 1 });
		expect(judged.file.sha256).toBe(createHash('sha256').update(large).digest('hex'));
		expect({ ...judged, file: null }).toEqual({ ...packed, file: null });
		const { status, out, err } = run(at('cut.csv', `${large}${'1'.repeat(1024 ** 2 + 4e5)}\n`));
		expect({ status, out }).toEqual({ status: 2, out: '' });
		expect(err).toBe(
			'cut.csv: line 110602: found a line longer than 768 kB; accepted: a table as text, a line a row\n',
		);
	});

	test('writes a file by its ending, pictures beside it', () => {
		const path = at('drive.csv', table);
		const out = join(path, '..', 'report.md');
		expect(run(path, '--out', out, ...undrawn).status).toBe(0);
		expect(readFileSync(out, 'utf8')).toContain('![The whole log](report-overview.svg)');
		expect(existsSync(join(path, '..', 'report-overview.svg'))).toBe(true);
		expect(run(path, '--out', join(path, '..', 'report.html'), ...undrawn).status).toBe(0);
		expect(readFileSync(join(path, '..', 'report.html'), 'utf8')).toContain('<svg');
	});

	test.each([
		['no numbers', 'a,b\nc,d\n', [], /drive\.csv: found no columns of numbers; accepted: a table as text/],
		['nothing', '', [], /drive\.csv: found nothing at all/],
		['bytes', new Uint8Array(5000).map((_, at) => (at * 7) % 32), [], /found bytes that are no text/],
		['no time', 'n,RPM\n1,800\n', [], /found no column of time; accepted: --channel time=HEADER@UNIT/],
		['a cut gzip', gzipSync(table).subarray(0, 900), [], /a gzip file that is damaged or cut/],
		['a bad --channel', table, ['--channel', 'rpm'], /--channel: found "rpm"; accepted: NAME=HEADER/],
		['a header that is not there', table, ['--not', 'Boost'], /found no column "Boost"; accepted: Time \(s\), RPM/],
		[
			'a bad ending',
			table,
			['--out', 'x.pdf'],
			/--out: found "x\.pdf"; accepted: a file ending in \.md, \.html, \.json/,
		],
	] as const)('%s: one clear error, status 2', (_, content, flags, message) => {
		const { status, out, err } = run(at('drive.csv', content), ...flags);
		expect(err).toMatch(message);
		expect(err.trim().split('\n')).toHaveLength(1);
		expect(out).toBe('');
		expect(status).toBe(2);
	});
});

test('swap-audit channels prints each channel, as JSON with headers and range', () => {
	expect(runCommand(['channels']).out).toMatch(/engine_speed: engine speed\n {2}units: rpm/);
	const all = JSON.parse(runCommand(['channels', '--json']).out);
	expect(all.find(({ channel }: { channel: string }) => channel === 'coolant_temp')).toMatchObject({
		kind: 'temperature',
		unit: 'K',
		range: [228.15, 453.15],
	});
});
