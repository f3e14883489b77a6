import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { temporaryFolder } from '../support/folder.ts';
import { openTerminal, type Terminal } from '../support/terminal.ts';

let open: Terminal | null = null;
afterEach(() => {
	open?.kill('SIGKILL');
	open = null;
});

const [ctrlG, ctrlQ, ctrlU, end, enter, tab, esc] = ['\u0007', '\u0011', '\u0015', '\u001b[F', '\r', '\t', '\u001b'];
const pasted = (text: string) => `\u001b[200~${text}\u001b[201~`;

test('in a terminal: a half is begun, typed, pasted into, taken back and left in the middle of a word; the sheet has it all', async () => {
	const home = temporaryFolder();
	const sheet = join(home, 'mule.json');
	const plugsIn = () => JSON.parse(readFileSync(sheet, 'utf8')).plugs;
	const terminal = openTerminal({ args: ['interview', sheet, '--quick'], home });
	open = terminal;
	await terminal.ready();
	// All of it in one write: keys must not meet a stale frame.
	terminal.send(ctrlG + end + enter + enter + enter);
	await terminal.sees("plug 1: engine's half, 0 pins");
	terminal.send(`14${enter}GN/WH${enter}coolant te${tab}${enter}`);
	await terminal.sees('coolant temperature signal');
	terminal.send(pasted('20\tred\tB+\r\n21\tblack\tpower ground\r\n22\ttan\tspare\r\n'));
	await terminal.sees('3 pins: 3 new');
	await expect.poll(() => plugsIn()[0].pins.length, { timeout: 8000 }).toBe(4);
	terminal.send(ctrlU);
	await expect.poll(() => plugsIn()[0].pins.length, { timeout: 8000 }).toBe(1);
	await terminal.resize(40, 12);
	await terminal.sees('all keys');
	expect(terminal.scrollback().length).toBe(12);
	terminal.send('left-over');
	await terminal.sees('left-over');
	terminal.send(esc);
	await terminal.sees('Enter next cell');
	terminal.send(`15${enter}${enter}keep al`);
	await terminal.sees('keep al');
	terminal.send(ctrlQ);
	expect((await terminal.done).status).toBe(0);
	expect(plugsIn()).toEqual([
		{
			plug: 'plug 1',
			half: 'engine',
			pins: [
				{ pin: '14', wire: 'GN/WH', circuit: 'coolant temperature signal' },
				{ pin: '15', circuit: 'keep al' },
			],
		},
	]);
});
