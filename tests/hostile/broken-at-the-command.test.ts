import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { counts } from '../counts.ts';
import { command, runCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';
import { bigFiles, brokenFiles, full } from './broken-files.ts';

// The same broken files through the real command: status 2, one clear error with its place, nothing written.

/** Every command that reads a sheet, taken in turn. */
const commands: readonly (readonly [name: string, ...flags: string[]])[] = [
	['audit'],
	['interview', '--plain'],
	['recheck'],
	['audit', '--record'],
	['limits', '--json'],
	['next'],
	['readings'],
	['audit', '--json', '--gate', 'tidy'],
];

function broken(content: string | Buffer): string {
	const path = join(temporaryFolder(), 'mule.json');
	writeFileSync(path, content);
	return path;
}

test.each(brokenFiles.map(([what, make], index) => ({ what, make, args: commands[index % commands.length]! })))(
	'$args.0 of $what',
	({ make, args: [name, ...flags] }) => {
		const path = broken(make());
		const before = readFileSync(path);
		const { status, out, err } = runCommand([name, path, ...flags]);
		const [first = '', ...faults] = err.trimEnd().split('\n');
		// Either the file is no text, or it is named and its fault reported below.
		if (faults.length === 0) expect(first).toMatch(/^\/.*mule\.json: .*(?:line \d+|UTF-16)/);
		else {
			expect(first).toMatch(/^\/.*mule\.json cannot be used as it is; nothing was changed\.$/);
			expect(faults).toEqual([expect.stringMatching(/^sheet: found .*; accepted: ./)]);
		}
		expect([status, out]).toEqual([2, '']);
		expect(readFileSync(path).equals(before)).toBe(true);
		expect(readdirSync(dirname(path))).toEqual(['mule.json']);
	},
);

test('a sheet with many faults has a line for each, with its place, and nothing else', () => {
	const path = broken(full.replaceAll('"unit": "psi"', '"unit": "furlong"').replaceAll('"measured"', '"guessed"'));
	const { status, out, err } = runCommand(['audit', path]);
	const [first, ...others] = err.trimEnd().split('\n');
	expect(first).toBe(`${path} cannot be used as it is; nothing was changed.`);
	expect(others.length).toBeGreaterThan(100);
	for (const line of others)
		expect(line).toMatch(/^\w+\.\w+\.(?:unit|known): found "(?:furlong|guessed)"; accepted: ./);
	expect([status, out]).toEqual([2, '']);
});

test.each([
	['a folder', (path: string) => mkdirSync(path), 'this is a folder'],
	['a pipe that nobody writes to', (path: string) => spawnSync('mkfifo', [path]), 'this is a device or a pipe'],
	['a device that never ends', (path: string) => symlinkSync('/dev/zero', path), 'this is a device or a pipe'],
	['a link to itself', (path: string) => symlinkSync('mule.json', path), 'links go round in a circle'],
	['a link to nowhere', (path: string) => symlinkSync('gone.json', path), 'there is no such sheet'],
	['nothing', () => {}, 'there is no such sheet'],
])('%s in the place of a sheet is refused, and left alone', (_, make, why) => {
	const path = join(temporaryFolder(), 'mule.json');
	make(path);
	const before = readdirSync(dirname(path));
	const { status, out, err } = runCommand(['audit', path, '--record']);
	expect(err).toContain(`${path}: `);
	expect(err).toContain(why);
	expect([status, out]).toEqual([2, '']);
	expect(readdirSync(dirname(path))).toEqual(before);
});

/** The most memory that a command may take for a file that is no sheet, in kB: 300 MB. */
const mostMemory = 300 * 1024;

/** Tells on stream 3, at the end, the most memory that the process held, in kB. */
const telling = `data:text/javascript,import{writeSync}from'node:fs';process.on('exit',()=>writeSync(3,String(process.resourceUsage().maxRSS)))`;

test.each(bigFiles.slice(0, counts.bigFiles))(
	'%s: refused in a short line, in 300 MB of memory',
	(what, make) => {
		const path = broken(make());
		const start = performance.now();
		// Through a shell: the system counts what a process held before it became another, and this one holds a lot.
		const line = [process.execPath, '--import', telling, command, 'audit', path];
		const done = spawnSync('sh', ['-c', '"$@"; exit $?', 'sh', ...line], {
			stdio: ['ignore', 'pipe', 'pipe', 'pipe'],
			encoding: 'utf8',
		});
		const memory = Number(done.output[3]);
		console.info(`${what}: ${Math.round(memory / 1024)} MB, ${Math.round(performance.now() - start)} ms`);
		expect([done.status, done.stdout]).toEqual([2, '']);
		expect(done.stderr).toMatch(/found |larger than 16 MB/);
		expect(done.stderr.length).toBeLessThan(200_000);
		expect(memory).toBeGreaterThan(0);
		expect(memory).toBeLessThan(mostMemory);
	},
	120_000,
);
