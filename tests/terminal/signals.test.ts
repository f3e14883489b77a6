import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { constants } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { command } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';
import { openTerminal, type Terminal } from '../support/terminal.ts';

let open: Terminal | null = null;
afterEach(() => {
	open?.kill('SIGKILL');
	open = null;
});

const ending = [
	'SIGHUP',
	'SIGINT',
	'SIGQUIT',
	'SIGTERM',
	'SIGALRM',
	'SIGVTALRM',
	'SIGXCPU',
	'SIGXFSZ',
	'SIGUSR1',
	'SIGUSR2',
] as const;

/** What the terminal is left with: the modes that were turned on and not off again. */
function modesLeft(bytes: string): string[] {
	const on = new Set<string>();
	for (const [, mode, what] of bytes.matchAll(/\u001b\[\?(\d+)([hl])/g))
		what === 'h' ? on.add(mode!) : on.delete(mode!);
	// 25 is the cursor, which is there before.
	on.delete('25');
	return [...on];
}

describe('a signal that ends it', () => {
	test.each(ending)(
		'%s: the terminal as it was, the half-typed text kept, the status that shells know',
		async signal => {
			const home = temporaryFolder();
			const sheet = join(home, 'mule.json');
			const terminal = openTerminal({ args: ['interview', sheet, '--quick'], home });
			open = terminal;
			await terminal.ready();
			terminal.send('halfway');
			await terminal.sees('halfway');
			terminal.kill(signal);
			expect((await terminal.done).status).toBe(128 + constants.signals[signal]);
			expect(modesLeft(terminal.bytes())).toEqual([]);
			expect(terminal.bytes()).not.toContain('Debugger');
			expect(terminal.bytes().lastIndexOf('\u001b[?25h')).toBeGreaterThan(terminal.bytes().lastIndexOf('\u001b[?25l'));
			expect(JSON.parse(readFileSync(sheet, 'utf8')).draft).toMatchObject({ text: 'halfway' });
		},
	);
});

/** A shell with job control, and the command started in it. */
async function inShell(): Promise<{ terminal: Terminal; sheet: string }> {
	const home = temporaryFolder();
	const sheet = join(home, 'mule.json');
	const env = { PS1: 'shell> ' };
	const terminal = openTerminal({ file: '/bin/bash', args: ['--norc', '--noediting', '-i'], program: true, home, env });
	open = terminal;
	await terminal.sees('shell> ');
	terminal.send(`${process.execPath} ${command} interview ${sheet} --quick\r`);
	await terminal.ready();
	return { terminal, sheet };
}

describe('stopped and gone on with', () => {
	test.each([
		['Ctrl-Z', (terminal: Terminal, _pid: number): unknown => terminal.send('\u001a')],
		['a stop signal', (_terminal: Terminal, pid: number): unknown => process.kill(pid, 'SIGTSTP')],
	] as const)('%s: the shell gets its terminal, and fg draws everything again', async (_, stop) => {
		const { terminal, sheet } = await inShell();
		terminal.send('half');
		await terminal.sees('half');
		stop(
			terminal,
			Number(
				execFileSync('pgrep', ['-P', String(terminal.pid)])
					.toString()
					.split('\n')[0],
			),
		);
		await terminal.sees(/Stopped/);
		expect(modesLeft(terminal.bytes()).filter(mode => mode !== '2004')).toEqual([]);
		expect(existsSync(sheet)).toBe(true);
		terminal.send('echo still $((40 + 2))\r');
		await terminal.sees('still 42');
		terminal.send('fg\r');
		await terminal.sees('How far along');
		await terminal.sees('half');
		terminal.send('x');
		await terminal.sees('halfx');
		terminal.send('\u0011');
		await terminal.sees('Saved in');
	});

	test('stopped by force and continued, it takes the terminal again', async () => {
		const home = temporaryFolder();
		const terminal = openTerminal({ args: ['interview', join(home, 'mule.json'), '--quick'], home });
		open = terminal;
		await terminal.ready();
		process.kill(terminal.pid, 'SIGSTOP');
		process.kill(terminal.pid, 'SIGCONT');
		terminal.send('yes');
		await terminal.sees('yes_');
		await terminal.sees('How far along');
	});

	test('where no shell could go on with it, Ctrl-Z stops nothing', async () => {
		const home = temporaryFolder();
		const terminal = openTerminal({ args: ['interview', join(home, 'mule.json'), '--quick'], home });
		open = terminal;
		await terminal.ready();
		terminal.send('\u001a');
		await terminal.quiet();
		terminal.send('on');
		await terminal.sees('on_');
	});
});
