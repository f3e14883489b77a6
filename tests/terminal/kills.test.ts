import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { writeSheet } from '../../src/sheet/write.ts';
import { counts } from '../counts.ts';
import { temporaryFolder } from '../support/folder.ts';
import { openTerminal, type Terminal } from '../support/terminal.ts';
import { Person } from './person.ts';

vi.setConfig({ testTimeout: 1_800_000 });

/** The sheet as it stands before each answer of a whole quick pass, and the keys of that answer. */
function pass(): { readonly before: string; readonly keys: string }[] {
	const person = new Person('mule', 'boosted');
	const given: { before: string; keys: string }[] = [];
	for (let before = writeSheet(person.state.sheet), keys = person.keys(); keys !== null; keys = person.keys()) {
		given.push({ before, keys });
		before = writeSheet(person.state.sheet);
	}
	return given;
}

const given = pass();
const at = counts.everyAnswer ? given.map((_, index) => index) : [0, Math.floor(given.length / 2), given.length - 2];

const answersIn = (path: string): number =>
	Object.values(JSON.parse(readFileSync(path, 'utf8')).answers as Record<string, object>).reduce(
		(sum, section) => sum + Object.keys(section).length,
		0,
	);

describe.each([
	['Ctrl-C', (terminal: Terminal) => terminal.send('\u0003')],
	['a closed window', (terminal: Terminal) => terminal.kill('SIGHUP')],
	['a kill', (terminal: Terminal) => terminal.kill('SIGKILL')],
] as const)('%s', (_, stop) => {
	test.each(at.map(index => index + 1))('after answer %i leaves just so many in the file', async count => {
		const home = temporaryFolder();
		const sheet = join(home, 'mule.json');
		writeFileSync(sheet, given[count - 1]!.before);
		const terminal = openTerminal({ args: ['interview', sheet, '--quick'], home });
		try {
			await terminal.ready();
			terminal.send(given[count - 1]!.keys);
			await expect.poll(() => answersIn(sheet), { timeout: 8000 }).toBe(count);
			stop(terminal);
			await terminal.done;
			expect(answersIn(sheet)).toBe(count);
		} finally {
			terminal.kill('SIGKILL');
		}
	});
});
