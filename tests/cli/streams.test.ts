import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { withAnswer } from '../../src/sheet/sheet.ts';
import { writeSheet } from '../../src/sheet/write.ts';
import { command, runCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';
import { buildSheet } from '../support/model.ts';

/** A build that fails a gate, with an odd figure in it: something to say about on stderr. */
const odd = withAnswer(
	withAnswer(buildSheet('boosted'), 'ignition.gap', { value: 0.06, unit: 'in', known: 'measured' }),
	'engine.bore',
	{ value: 5.2, unit: 'in', known: 'measured' },
);

function sheetFile(): string {
	const path = join(temporaryFolder(), 'mule.json');
	writeFileSync(path, writeSheet(odd));
	return path;
}

describe('stdout holds data only; what there is to say goes to stderr', () => {
	test.each([
		['audit', '--json', '--draws', '0'],
		['recheck', '--json', '--no-record', '--draws', '0'],
		['limits', '--json'],
		['readings', '--json'],
	])('%s %s', (name, ...flags) => {
		const { out, err } = runCommand([name, sheetFile(), ...flags]);
		expect(() => JSON.parse(out)).not.toThrow();
		expect(err).toMatch(/^Odd: engine\.bore: found /m);
	});

	test.each([['recheck', '--draws', '0'], ['limits']])('%s in words', (name, ...flags) => {
		const { out, err } = runCommand([name, sheetFile(), ...flags]);
		expect(out.length).toBeGreaterThan(20);
		expect(out).not.toMatch(/^Odd: |^Nothing to compare/m);
		expect(err).toMatch(/^Odd: engine\.bore: found /);
	});

	test('--out says nothing on stdout', () => {
		const path = sheetFile();
		expect(runCommand(['audit', path, '--out', `${path}.md`, '--draws', '0'])).toMatchObject({ status: 0, out: '' });
	});

	test.each([
		[['questions', '--json'], 'json'],
		[['questions', '--schema'], 'json'],
		[['audit', '--schema'], 'json'],
		[['quantities', '--json'], 'json'],
		[['rules', 'list'], 'words'],
	] as const)('%j says nothing beside its data', (args, kind) => {
		const { out, err } = runCommand(args);
		if (kind === 'json') expect(() => JSON.parse(out)).not.toThrow();
		expect(out).not.toBe('');
		expect(err).toBe('');
	});

	test('what a pack changes is said on stderr', () => {
		const { out, err } = runCommand(['rules', 'list', 'demo/packs']);
		expect(out).not.toContain('changed by the pack');
		expect(out.trimEnd().split('\n').length).toBeGreaterThan(200);
		expect(err === '' || /changed by the pack/.test(err)).toBe(true);
	});
});

describe('a pipe that nobody reads is a quiet end, with the status that the command came to', () => {
	test.each([
		[['audit', '--json', '--draws', '0'], 0],
		[['audit', '--draws', '0', '--gate', 'boost'], 1],
		// Nobody read the questions: the interview did not come to its end.
		[['interview', '--plain'], 130],
	] as const)('%j', ([name, ...flags], status) => {
		const words = [process.execPath, command, name, sheetFile(), ...flags].map(word => `'${word}'`).join(' ');
		// Nothing reads: `true` is gone long before the command prints.
		const { stdout, stderr } = spawnSync('sh', ['-c', `{ ${words} </dev/null; echo "status $?" >&2; } | true`], {
			encoding: 'utf8',
		});
		expect(stdout).toBe('');
		expect(stderr.replace(/^Odd: .*\n/, '').replace(/^not ready to .*\n/, '')).toBe(`status ${status}\n`);
	});
});

test('a full disk behind stdout is reported as what it is, with status 2', () => {
	const { status, stderr } = spawnSync(
		'sh',
		['-c', `'${process.execPath}' '${command}' questions --json > /dev/full`],
		{
			encoding: 'utf8',
		},
	);
	expect(stderr).toBe('standard output: the disk is full. Free some space, then try again.\n');
	expect(status).toBe(2);
});

test('5 MB of JSON come whole through a pipe whose reader is slow', async () => {
	const sheets = 12;
	const child = spawn(process.execPath, [command, 'audit', '--lines', '--date', '2026-05-01']);
	child.stdin.end(`${JSON.stringify(odd)}\n`.repeat(sheets));
	let out = '';
	let full = 0;
	child.stdout.setEncoding('utf8');
	// A page at a time, and as much of other work between: the pipe is full most of the time.
	child.stdout.on('readable', () => {
		for (let part = child.stdout.read(4096); part !== null; part = child.stdout.read(4096)) {
			out += part;
			if (child.stdout.readableLength >= child.stdout.readableHighWaterMark) full++;
		}
		out += child.stdout.read() ?? '';
	});
	const [status] = await once(child, 'close');
	expect(status).toBe(0);
	expect(full).toBeGreaterThan(0);
	expect(out.length).toBeGreaterThan(5e6);
	const lines = out.trimEnd().split('\n');
	expect(lines.length).toBe(sheets);
	for (const line of lines) expect(JSON.parse(line).sheet).toBe('boosted');
});

test('a folder instead of sheets on standard input is reported as what it is, with status 2', () => {
	for (const what of [
		['audit', '--lines'],
		['audit', '-'],
	]) {
		const words = [process.execPath, command, ...what].map(word => `'${word}'`).join(' ');
		const { status, stdout, stderr } = spawnSync('sh', ['-c', `${words} < '${temporaryFolder()}'`], {
			encoding: 'utf8',
		});
		expect(stderr).toMatch(/^standard input: this is a folder\. /);
		expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
	}
});
