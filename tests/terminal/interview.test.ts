import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../support/folder.ts';
import { openTerminal, type Terminal, type TerminalOptions } from '../support/terminal.ts';
import { Person } from './person.ts';

let open: Terminal | null = null;

/** The command on a sheet in a new folder, ready for keys. */
async function opened(
	options: Partial<TerminalOptions> & { file?: string } = {},
): Promise<{ terminal: Terminal; sheet: string; home: string }> {
	const home = options.home ?? temporaryFolder();
	const sheet = join(home, 'mule.json');
	const terminal = openTerminal({ args: ['interview', sheet, '--quick'], ...options, home });
	open = terminal;
	await terminal.ready();
	return { terminal, sheet, home };
}

afterEach(() => {
	open?.kill('SIGKILL');
	open = null;
});

const answersIn = (path: string): number =>
	Object.values(JSON.parse(readFileSync(path, 'utf8')).answers as Record<string, object>).reduce(
		(sum, section) => sum + Object.keys(section).length,
		0,
	);

describe('a whole quick pass by keys', () => {
	test('ends with the audit on the screen and in a file beside the sheet, which is offered the next time', async () => {
		const { terminal, sheet, home } = await opened();
		const person = new Person('mule', 'boosted');
		const count = await person.finish(terminal);
		await terminal.sees('Audit of mule');
		expect(count).toBeLessThanOrEqual(86);
		expect(answersIn(sheet)).toBe(count);
		const audit = readFileSync(sheet.replace('.json', '.audit.md'), 'utf8');
		expect(audit).toContain('# Swap audit: mule');
		expect(JSON.parse(readFileSync(sheet, 'utf8')).audits.length).toBe(1);
		terminal.send('\u0011');
		expect((await terminal.done).status).toBe(0);
		const again = openTerminal({ home });
		open = again;
		await again.sees('mule');
	});

	test('answers typed ahead, many in one write, all arrive', async () => {
		const { terminal, sheet } = await opened();
		const person = new Person('mule', 'unboosted');
		const ahead = Array.from({ length: 12 }, () => person.keys()).join('');
		terminal.send(ahead);
		await expect.poll(() => answersIn(sheet), { timeout: 5000 }).toBe(12);
	});
});

describe('leaving loses nothing', () => {
	test.each([
		['Ctrl-C', (terminal: Terminal) => terminal.send('\u0003'), 0],
		['a closed window', (terminal: Terminal) => terminal.kill('SIGHUP'), 129],
		['a signal to end', (terminal: Terminal) => terminal.kill('SIGTERM'), 143],
	] as const)(
		'%s: the answers and the half-typed text are kept, and the next start goes on there',
		async (_, leave, status) => {
			const { terminal, sheet, home } = await opened();
			const person = new Person('mule', 'boosted');
			for (let index = 0; index < 5; index++) {
				terminal.send(person.keys()!);
				await terminal.sees(person.question()!);
			}
			terminal.send('halfway');
			await terminal.sees('halfway');
			leave(terminal);
			expect((await terminal.done).status).toBe(status);
			expect(answersIn(sheet)).toBe(5);
			// The shell's history above comes back with the screen.
			expect(terminal.bytes()).toContain('\u001b[?1049l');
			if (status === 0) await terminal.sees('Saved in');
			const again = await opened({ home });
			await again.terminal.sees('halfway');
		},
	);
});

describe('windows', () => {
	test.each([
		[80, 24],
		[40, 12],
	] as const)('%i x %i: every frame fits, question and footer in sight', async (cols, rows) => {
		const { terminal } = await opened({ cols, rows });
		const person = new Person('mule', 'boosted');
		for (let index = 0; index < 20; index++) {
			terminal.send(person.keys()!);
			await terminal.sees(person.question(cols)!);
			await terminal.sees('? all keys');
			expect(terminal.scrollback().length).toBe(rows);
		}
	});

	test('a resize leaves no debris', async () => {
		const { terminal } = await opened({ cols: 120, rows: 30 });
		await terminal.resize(40, 12);
		await terminal.resize(120, 30);
		const times = (text: string) => terminal.screen().join('\n').split(text).length - 1;
		await expect
			.poll(() => [times('How far along is the build'), times('? all keys')], { timeout: 5000 })
			.toEqual([1, 1]);
	});

	test('without colour no colour codes are sent, and the text is the same', async () => {
		const { terminal } = await opened({ env: { NO_COLOR: '1' } });
		await terminal.sees('How far along');
		expect(terminal.bytes()).not.toMatch(/\u001b\[[0-9;]*3[0-7]m/);
		const plain = terminal.screen();
		terminal.kill('SIGKILL');
		const coloured = await opened({ env: { FORCE_COLOR: '3' } });
		await coloured.terminal.sees('How far along');
		expect(coloured.terminal.screen()).toEqual(plain);
	});
});

test('the opening screen starts a new build under the name typed', async () => {
	const home = temporaryFolder();
	const terminal = openTerminal({ home });
	open = terminal;
	await terminal.ready();
	await terminal.type(['\r', 'shed', '\r', '\r']);
	await terminal.sees('How far along');
	expect(existsSync(join(home, 'swap-audit', 'shed.json'))).toBe(true);
});
