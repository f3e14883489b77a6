import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { writeSheet } from '../../src/sheet/write.ts';
import { driveTable } from '../support/drive-table.ts';
import { temporaryFolder } from '../support/folder.ts';
import { buildSheet } from '../support/model.ts';
import { simulateDrive } from '../support/simulated-drive.ts';
import { openTerminal } from '../support/terminal.ts';

test('Ctrl-C while a log is judged ends the command, with no line of progress left', async () => {
	const home = temporaryFolder();
	writeFileSync(join(home, 'mule.json'), writeSheet(buildSheet('boosted')));
	writeFileSync(join(home, 'drive.csv'), driveTable(simulateDrive({ rate: 10, pulls: 1, cruise: 10 })));
	const terminal = openTerminal({ home, args: ['log', 'mule.json', 'drive.csv'] });
	await terminal.sees('judging');
	terminal.send('\u0003');
	expect((await terminal.done).status).toBe(130);
	expect(terminal.screen().join('').trim()).toBe('');
});
