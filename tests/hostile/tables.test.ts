import { appendFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { openStream } from '../../src/files/stream.ts';
import { writeSheet } from '../../src/sheet/write.ts';
import { openTable } from '../../src/table/table.ts';
import { runCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';
import { buildSheet } from '../support/model.ts';
import { recorded } from '../support/recorded.ts';

const head = 'Time (s),RPM\n';
const rows = (count: number) => Array.from({ length: count }, (_, row) => `${row},${800 + row}\n`).join('');

/** Many pieces of one kind, none of them kept. */
async function* pieces(first: string, piece: Uint8Array, count: number): AsyncGenerator<Uint8Array> {
	yield new TextEncoder().encode(first);
	for (let at = 0; at < count; at++) yield piece;
}
const megabyte = (letter: string) => new Uint8Array(2 ** 20).fill(letter.charCodeAt(0));
const none = () => false;

test('one line of 100 MB ends at once, at the start and in the middle', async () => {
	await expect(openTable(pieces('', megabyte('1'), 100), none)).rejects.toThrow(
		'line 1: found a line longer than 768 kB',
	);
	await expect(openTable(pieces(head, megabyte('1'), 100), none)).rejects.toThrow(
		'line 2: found a line longer than 768 kB',
	);
	const late = await openTable(pieces(head + rows(200_000), megabyte('1'), 100), none);
	const reading = (async () => {
		for await (const _ of late.rows(['number', 'number']));
	})();
	await expect(reading).rejects.toThrow('line 200002: found a line longer than 768 kB');
});

test('100,000 columns are refused', async () => {
	const line = `${Array.from({ length: 100_000 }, (_, at) => at).join(',')}\n`;
	await expect(recorded(line.repeat(2))).rejects.toThrow('found 100000 columns; accepted: at most 2000');
});

test('NUL bytes and numbers beyond all range cost their own lines, reported with their places', async () => {
	const { totals, readings } = await recorded(`${head}${rows(50)}50,8\0\x000\n51,1e999\n52,-1e999\n53,900\n`);
	expect(totals.unread).toBe(3);
	expect(totals.faults[1]).toBe('line 53, column 2: found "1e999"');
	expect(readings.engine_speed!.at(-1)).toBe(900);
	expect(readings.engine_speed!.every(value => Number.isNaN(value) || Number.isFinite(value))).toBe(true);
});

test('a gzip bomb ends before it is unpacked', async () => {
	const path = join(temporaryFolder(), 'bomb.csv.gz');
	// Over 64 MB, from which on the ratio counts; long lines, which are read faster than many.
	const line = `1,${' '.repeat(4000)}1\n`;
	writeFileSync(path, gzipSync(Buffer.concat([Buffer.from(head + rows(100)), Buffer.alloc(72 * 2 ** 20, line)])));
	const { status, out, err } = runCommand(['log', '-', path], { input: writeSheet(buildSheet('boosted')) });
	expect(err).toMatch(/bomb\.csv\.gz: this unpacks to more than 300 times its size/);
	expect(out).toBe('');
	expect(status).toBe(2);
});

test('a file that grows while it is read ends where it ended when it was opened', async () => {
	const path = join(temporaryFolder(), 'drive.csv');
	writeFileSync(path, head + rows(10));
	const { bytes, size } = await openStream(path);
	appendFileSync(path, rows(1000));
	let taken = 0;
	for await (const piece of bytes) taken += piece.length;
	expect(taken).toBe(size);
});

test('a pipe that ends in the middle of a line loses that line alone', () => {
	const path = join(temporaryFolder(), 'car.sheet.json');
	writeFileSync(path, writeSheet(buildSheet('boosted')));
	const args = ['log', path, '-', '--json', '--draws', '0'];
	const { status, out } = runCommand(args, { input: `${head}${rows(30)}30,8` });
	// A cut number looks like a whole one; a cut line can.
	expect(JSON.parse(out).file).toMatchObject({ name: 'standard input', rows: 31, unread: 0 });
	expect(status).toBe(0);
	const cut = runCommand(args, { input: `${head}${rows(30)}30` });
	expect(JSON.parse(cut.out).file).toMatchObject({ rows: 30, unread: 1 });
});

test('escape sequences in headers and cells never reach the terminal', () => {
	const path = join(temporaryFolder(), 'drive.csv');
	writeFileSync(
		path,
		`Time (s),RPM,\u001b[2J\u001b]0;gone\u0007Boost \u202e(psi)\n${rows(20).replaceAll('\n', ',\u001b[31mx\n')}`,
	);
	for (const flags of [[], ['--json'], ['--not', 'nothing']]) {
		const args = ['log', '-', path, '--draws', '0', ...flags];
		const { out, err } = runCommand(args, { input: writeSheet(buildSheet('boosted')) });
		expect(`${out}${err}`).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/);
	}
});

test('a log whose times cannot be read is refused, whatever else is in it', () => {
	const path = join(temporaryFolder(), 'drive.csv');
	writeFileSync(path, `${head}${Array.from({ length: 50 }, (_, row) => `,${800 + row}`).join('\n')}\n`);
	const { status, out, err } = runCommand(['log', '-', path], { input: writeSheet(buildSheet('boosted')) });
	expect(err).toMatch(/found no row with a time; accepted: a time in the rows/);
	expect([status, out]).toEqual([2, '']);
});
