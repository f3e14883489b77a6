import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, describe, expect, test } from 'vitest';
import { emptySheet } from '../../src/sheet/sheet.ts';
import { writeSheet } from '../../src/sheet/write.ts';
import { startCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';
import { openTerminal, type Terminal } from '../support/terminal.ts';
import { Person } from '../terminal/person.ts';

// A bug is made from outside: one call of the system throws what no program expects, in the middle of a command.

const preload = `--import ${new URL('../support/break.mjs', import.meta.url).href}`;
const broken = (call: string, after = 0) => ({ NODE_OPTIONS: preload, BREAK: call, BREAK_AFTER: String(after) });

function sheetFile(): { home: string; path: string; text: string } {
	const home = temporaryFolder();
	const path = join(home, 'mule.json');
	const text = writeSheet(emptySheet('mule'));
	writeFileSync(path, text);
	return { home, path, text };
}

describe('a bug ends with status 70, a short word, and where the saved sheet is', () => {
	test.each([[['audit', '--record', '--draws', '0']], [['recheck', '--draws', '0']]] as const)(
		'%j',
		([name, ...flags]) => {
			const { path, text } = sheetFile();
			const { status, out, err } = startCommand([name, path, ...flags], { env: broken('renameSync') });
			const spoken = err
				.trimEnd()
				.split('\n')
				.filter(line => !line.startsWith('Nothing to compare'));
			expect(spoken).toEqual([
				'This is a bug in swap-audit, not in your sheet: broken on purpose',
				`Your sheet is as it was last saved, in ${path}.`,
				'To see where it broke, do the same again with SWAP_AUDIT_TRACE=1 set.',
			]);
			expect([status, out]).toEqual([70, '']);
			expect(readFileSync(path, 'utf8')).toBe(text);
		},
	);

	test('the stack is shown when it is asked for, with the places of the source', () => {
		const { path } = sheetFile();
		const env = { ...broken('renameSync'), SWAP_AUDIT_TRACE: '1' };
		const { status, err } = startCommand(['audit', path, '--record', '--draws', '0'], { env });
		expect(err).toMatch(/\n {4}at .*src\/files\/.*\.ts:\d+:\d+/);
		expect(status).toBe(70);
	});

	test('by lines: the answers before it are in the sheet', () => {
		const home = temporaryFolder();
		const path = join(home, 'mule.json');
		const person = new Person('mule', 'boosted');
		const input = Array.from({ length: 5 }, () => `${person.keys()!.trimEnd()}\n`).join('');
		// A save renames the sheet and its last good copy: the new sheet and three answers.
		const { status, err } = startCommand(['interview', path, '--plain', '--quick'], {
			input,
			home,
			env: broken('renameSync', 8),
		});
		expect(err).toContain(`Your sheet is as it was last saved, in ${path}.`);
		expect(status).toBe(70);
		expect(answersIn(path)).toBe(3);
	});
});

let open: Terminal | null = null;
afterEach(() => {
	open?.kill('SIGKILL');
	open = null;
});

test('a bug in the drawn face gives the terminal back and says so', async () => {
	const home = temporaryFolder();
	const path = join(home, 'mule.json');
	const terminal = openTerminal({ args: ['interview', path, '--quick'], home, env: broken('renameSync', 4) });
	open = terminal;
	await terminal.ready();
	const person = new Person('mule', 'boosted');
	terminal.send(person.keys()!);
	await expect.poll(() => answersIn(path), { timeout: 8000 }).toBe(1);
	terminal.send(person.keys()!);
	const { status } = await terminal.done;
	expect(status).toBe(70);
	expect(terminal.bytes()).toContain('\u001b[?1049l');
	await terminal.sees('This is a bug in swap-audit, not in your sheet: broken on purpose');
	await terminal.sees('last saved, in');
	expect(terminal.screen().join('')).not.toMatch(/Saved in/);
	expect(answersIn(path)).toBe(1);
});

test('so does one while drawing', async () => {
	const home = temporaryFolder();
	const env = { NODE_OPTIONS: `--import ${new URL('../support/break-drawing.mjs', import.meta.url).href}` };
	const terminal = openTerminal({ args: ['interview', join(home, 'mule.json'), '--quick'], home, env });
	open = terminal;
	await terminal.ready();
	await terminal.resize(90, 24);
	expect((await terminal.done).status).toBe(70);
	expect(terminal.bytes()).toContain('\u001b[?1049l');
	await terminal.sees('This is a bug in swap-audit, not in your sheet');
	await terminal.sees('last saved, in');
});

const answersIn = (path: string): number =>
	Object.values(JSON.parse(readFileSync(path, 'utf8')).answers as Record<string, object>).reduce(
		(sum, section) => sum + Object.keys(section).length,
		0,
	);

test('the seam is no part of what is shipped', () => {
	const shipped = readFileSync(fileURLToPath(new URL('../../package.json', import.meta.url)), 'utf8');
	expect(JSON.parse(shipped).files.filter((path: string) => /^(src|tests|rules$)/.test(path))).toEqual([]);
});
