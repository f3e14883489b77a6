import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { command } from '../support/command.ts';

const dist = mkdtempSync(join(tmpdir(), 'swap-audit-start-'));
cpSync(dirname(command), dist, { recursive: true });
afterAll(() => rmSync(dist, { recursive: true }));

const kept = join(dist, 'kept');
const names = readdirSync(kept);
const help = join(kept, names.find(name => name.endsWith('-help')) ?? 'none');
const whole = readFileSync(help);
const run = (...args: string[]) =>
	spawnSync(process.execPath, [join(dist, 'swap-audit.js'), ...args], { encoding: 'utf8' });
const told = run('--help').stdout;

describe('what the build kept of the compiled program', () => {
	test('is there for each way to start the command', () => {
		expect(names.map(name => name.split('-').at(-1)).sort()).toEqual(['audit', 'help', 'interview']);
		expect(told).toMatch(/^Usage: swap-audit/);
	});

	test.each([
		['is empty', Buffer.alloc(0)],
		['is cut off', whole.subarray(0, whole.length / 2)],
		['is damaged', Buffer.from(whole).fill(0xaa, whole.length / 2, whole.length / 2 + 8)],
		['is of something else', Buffer.from('kept')],
	])('changes nothing but the time to start where it %s', (_, bytes) => {
		writeFileSync(help, bytes);
		expect(run('--help')).toMatchObject({ status: 0, stdout: told, stderr: '' });
	});

	test('is not needed: without it and the demo audit is the same', () => {
		const sheet = join(dist, 'demo.json');
		const audit = run('audit', sheet, '--date', '2026-01-01', '--draws', '10').stdout;
		rmSync(kept, { recursive: true });
		expect(run('--help')).toMatchObject({ status: 0, stdout: told, stderr: '' });
		expect(run('audit', sheet, '--date', '2026-01-01', '--draws', '10')).toMatchObject({ stdout: audit, stderr: '' });
	});
});
