// Runs as a process of its own: saves a counting sheet until it is killed, or a number of times.
import { unlinkSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileSystem } from '../../src/files/file-system.ts';
import { readWhole } from '../../src/files/read.ts';
import { saveWhole } from '../../src/files/save.ts';
import { sweep } from '../../src/files/sweep.ts';
import { watched } from '../support/faulty.ts';
import { countOf, sheetOf } from './sheet.ts';

const [, , mode, path = '', figure = '0'] = process.argv;

/** Adds one and prints the new count; false when another program was quicker. */
function addOne(on = fileSystem): boolean {
	const { text, mark } = readWhole(path);
	const count = countOf(text) + 1;
	const saved = saveWhole(path, sheetOf(count), mark, on);
	if (saved.result === 'saved') writeSync(1, `${count}\n`);
	else unlinkSync(saved.yours);
	return saved.result === 'saved';
}

if (mode === 'until killed') {
	sweep(dirname(path));
	for (;;) addOne();
}
if (mode === 'die before operation') {
	addOne(watched(n => n === Number(figure) && process.kill(process.pid, 'SIGKILL')));
}
if (mode === 'add') {
	for (let done = 0; done < Number(figure); ) if (addOne()) done++;
}
