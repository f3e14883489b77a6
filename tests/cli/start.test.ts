import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { command, runCommand } from '../support/command.ts';

const cache = mkdtempSync(join(tmpdir(), 'swap-audit-start-'));
afterAll(() => rmSync(cache, { recursive: true }));

const folder = join(cache, 'swap-audit', 'code');
const run = (args: readonly string[], env: Record<string, string> = {}) =>
	spawnSync(process.execPath, [command, ...args], {
		encoding: 'utf8',
		env: { ...process.env, NODE_DISABLE_COMPILE_CACHE: '', XDG_CACHE_HOME: cache, ...env },
	});
const cached = () => readdirSync(folder);
const help = run(['--help']).stdout;
const file = join(folder, cached()[0]!);
const whole = readFileSync(file);

describe('the cache of compiled code', () => {
	test('is made by the first run, a file for each way to start the command, and used by the next', () => {
		expect(help).toMatch(/^Usage: swap-audit/);
		const audit = () => run(['audit', join(dirname(command), 'demo.json'), '--draws', '0', '--date', '2026-05-01']);
		const first = audit();
		expect(
			cached()
				.map(name => name.split('-').at(-1))
				.sort(),
		).toEqual(['audit', 'help']);
		const bytes = () => Buffer.concat(cached().map(name => readFileSync(join(folder, name))));
		const before = bytes();
		expect(audit()).toMatchObject({ status: 0, stdout: first.stdout, stderr: first.stderr });
		expect(bytes().equals(before)).toBe(true);
	});

	test.each([
		['is empty', Buffer.alloc(0)],
		['is cut off', whole.subarray(0, whole.length / 2)],
		['is damaged', Buffer.from(whole).fill(0xaa, whole.length / 2, whole.length / 2 + 8)],
		['is of something else', Buffer.from('code')],
	])('changes nothing but the time to start where it %s, and is made anew', (_, bytes) => {
		writeFileSync(file, bytes);
		expect(run(['--help'])).toMatchObject({ status: 0, stdout: help, stderr: '' });
		expect(readFileSync(file).length).toBeGreaterThan(whole.length / 2);
	});

	test('drops what another build left behind', () => {
		writeFileSync(file, '');
		writeFileSync(join(folder, '1.2.3-x64-old-help'), 'code');
		run(['--help']);
		expect(cached()).not.toContain('1.2.3-x64-old-help');
	});

	test('is not needed: where it cannot be written, or is switched off, the command does the same', () => {
		rmSync(cache, { recursive: true });
		writeFileSync(cache, 'a file in the way');
		expect(run(['--help'])).toMatchObject({ status: 0, stdout: help, stderr: '' });
		expect(run(['--help'], { NODE_DISABLE_COMPILE_CACHE: '1' })).toMatchObject({ status: 0, stdout: help, stderr: '' });
		expect(readFileSync(cache, 'utf8')).toBe('a file in the way');
	});
});

test.each(['-h', '--help', '-V', '--version'])(
	'%s, which has a script of its own, says what the whole program says',
	flag => {
		const { status, out, err } = runCommand([flag]);
		expect(run([flag])).toMatchObject({ status, stdout: out, stderr: err });
	},
);
