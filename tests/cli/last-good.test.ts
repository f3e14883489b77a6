import { copyFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { saveWhole } from '../../src/files/save.ts';
import { writeSheet } from '../../src/sheet/write.ts';
import { runCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';
import { buildSheet } from '../support/model.ts';
import { openTerminal, type Terminal } from '../support/terminal.ts';

/** A sheet as the program saves it, with its last good copy beside it, in the folder of named sheets. */
function savedSheet(): { home: string; path: string; copy: string } {
	const home = temporaryFolder();
	const folder = join(home, 'swap-audit');
	const path = join(folder, 'mule.json');
	mkdirSync(folder);
	saveWhole(path, writeSheet(buildSheet('boosted')), null);
	return { home, path, copy: join(folder, '.mule.json.last-good') };
}

describe('with what is wrong it is said where the last good copy is', () => {
	test.each([
		['an edit that went wrong', '{"format": "swap-audit/sheet", ', ['audit', 'mule']],
		['zero bytes', Buffer.alloc(500), ['interview', 'mule', '--plain']],
		['UTF-16', Buffer.from('\ufeff{}', 'utf16le'), ['recheck', 'mule']],
		[
			'an answer that is none',
			writeSheet(buildSheet('boosted')).replace('"unit":"psi"', '"unit":"furlong"'),
			['next', 'mule'],
		],
	])('%s', (_, content, args) => {
		const { home, path, copy } = savedSheet();
		writeFileSync(path, content);
		const { status, out, err } = runCommand(args, { home });
		expect([status, out]).toEqual([2, '']);
		expect(err).toContain(`UTC, it is in ${copy}: copy that over the sheet to go back to it.`);
		expect(readFileSync(path).equals(Buffer.from(content))).toBe(true);
	});

	test('and copying it back mends the sheet, also one that was deleted', () => {
		const { home, path, copy } = savedSheet();
		rmSync(path);
		expect(runCommand(['audit', 'mule'], { home }).err).toContain(`it is in ${copy}: copy that`);
		copyFileSync(copy, path);
		expect(runCommand(['audit', 'mule', '--draws', '0'], { home }).status).toBe(0);
	});
});

test('a sheet that was never saved by the program, or that came in on a pipe, has no such line', () => {
	const path = join(temporaryFolder(), 'mule.json');
	writeFileSync(path, '{');
	for (const args of [
		['audit', path],
		['audit', '-'],
	]) {
		const { err } = runCommand(args, { input: '{' });
		expect(err).toContain('ends before its JSON does');
		expect(err).not.toContain('last good');
	}
});

let open: Terminal | null = null;
afterEach(() => {
	open?.kill('SIGKILL');
	open = null;
});

test('the opening screen says that a sheet cannot be read, and on Enter why and where the copy is', async () => {
	const { home, path } = savedSheet();
	writeFileSync(path, '{"format": ');
	const terminal = openTerminal({ home, rows: 30, cols: 100 });
	open = terminal;
	await terminal.ready();
	await terminal.sees('mule  cannot be read; its last good copy is kept: Enter says where');
	terminal.send('\r');
	await terminal.sees('a file that ends before its JSON does');
	await terminal.sees('.mule.json.last-good');
	await terminal.sees('A new build');
	expect(readFileSync(path, 'utf8')).toBe('{"format": ');
});
