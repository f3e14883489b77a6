import { readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { runCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';
import { openTerminal, type Terminal } from '../support/terminal.ts';

let open: Terminal | null = null;
afterEach(() => {
	open?.kill('SIGKILL');
	open = null;
});

test('when no answer can be saved any more, leaving says so first, and never calls the sheet saved', async () => {
	const home = temporaryFolder();
	const path = join(home, 'mule.json');
	const terminal = openTerminal({ args: ['interview', path, '--quick'], home });
	open = terminal;
	await terminal.ready();
	const before = readFileSync(path);
	// The folder's name leads nowhere from here on: no save can succeed.
	renameSync(home, `${home}-gone`);
	try {
		terminal.send('\r');
		await terminal.sees(/NOT SAVED: .*there is no such file or\s+folder/s);
		terminal.send('\u0011');
		await terminal.sees(/Leave\s+once\s+more\s+to\s+leave\s+without/);
		terminal.send('\u0011');
		expect((await terminal.done).status).toBe(2);
		await terminal.sees('Your last answers are not saved');
		const screen = terminal.screen().join('\n');
		expect(screen).not.toContain('Saved in');
		// They are elsewhere, whole, and the way back is said.
		const there = /They are in (\S+unsaved-\d+\.json)\./.exec(screen.replaceAll('\n', ''))![1]!;
		expect(Object.keys(JSON.parse(readFileSync(there, 'utf8')).answers.build)).toHaveLength(1);
		rmSync(there);
	} finally {
		renameSync(`${home}-gone`, home);
	}
	expect(readFileSync(path).equals(before)).toBe(true);
});

test('when another program wrote the sheet, that one stays, and the work goes on in one file beside it', async () => {
	const home = temporaryFolder();
	const path = join(home, 'mule.json');
	const terminal = openTerminal({ args: ['interview', path, '--quick'], home, cols: 120 });
	open = terminal;
	await terminal.ready();
	const theirs = readFileSync(path, 'utf8').replace('"mule"', '"theirs"');
	writeFileSync(path, theirs);
	terminal.send('\r');
	await terminal.sees('another program wrote the sheet meanwhile');
	await terminal.sees('mule.yours-1.json');
	await terminal.sees('^K seen');
	terminal.send('\r');
	const yours = join(home, 'mule.yours-1.json');
	await expect.poll(() => Object.keys(JSON.parse(readFileSync(yours, 'utf8')).answers.build).length).toBe(2);
	terminal.send('\u0011');
	expect((await terminal.done).status).toBe(0);
	await terminal.sees(`Saved in ${yours}, 2 answered.`);
	await terminal.sees('another program wrote the sheet meanwhile');
	expect(readFileSync(path, 'utf8')).toBe(theirs);
	expect(
		readdirSync(home)
			.filter(name => name.endsWith('.json'))
			.sort(),
	).toEqual(['mule.json', 'mule.yours-1.json']);
});

test('an audit made in a second terminal keeps its record, and the interview stays in its one file', async () => {
	const home = temporaryFolder();
	const path = join(home, 'mule.json');
	const terminal = openTerminal({ args: ['interview', path, '--quick'], home });
	open = terminal;
	await terminal.ready();
	const sheet = () => JSON.parse(readFileSync(path, 'utf8'));
	const count = () => Object.values<object>(sheet().answers).flatMap(answers => Object.keys(answers)).length;
	terminal.send('\r');
	await expect.poll(count).toBe(1);
	expect(runCommand(['audit', path, '--record', '--draws', '0'], { home }).status).toBe(0);
	terminal.send('\r');
	await expect.poll(count).toBe(2);
	terminal.send('\r');
	await expect.poll(count).toBe(3);
	expect(sheet().audits.length).toBe(1);
	terminal.send('\u0011');
	expect((await terminal.done).status).toBe(0);
	expect(readdirSync(home).filter(name => name.includes('yours'))).toEqual([]);
	expect(sheet().audits.length).toBe(1);
});
