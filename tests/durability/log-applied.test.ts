import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readWhole } from '../../src/files/read.ts';
import { saveWhole } from '../../src/files/save.ts';
import { checkSheet } from '../../src/sheet/check.ts';
import { parseSheet } from '../../src/sheet/parse.ts';
import type { Sheet } from '../../src/sheet/sheet.ts';
import { writeSheet } from '../../src/sheet/write.ts';
import { counts, seed } from '../counts.ts';
import { chance } from '../support/chance.ts';
import { command, sharedCache } from '../support/command.ts';
import { driveTable } from '../support/drive-table.ts';
import { temporaryFolder } from '../support/folder.ts';
import { buildSheet, testModel } from '../support/model.ts';
import { simulateDrive } from '../support/simulated-drive.ts';

const before = writeSheet(buildSheet('boosted'));
const table = driveTable(simulateDrive({ rate: 10, pulls: 1, cruise: 10 }));
const sheetAt = (path: string): Sheet =>
	checkSheet(parseSheet(readFileSync(path, 'utf8')), testModel().rulebook.questions).sheet;

/** A log being written into a sheet, as a process of its own. */
function applying() {
	const home = temporaryFolder();
	const sheet = join(home, 'mule.json');
	const log = join(home, 'drive.csv');
	writeFileSync(sheet, before);
	writeFileSync(log, table);
	const args = [command, 'log', sheet, log, '--apply', '--draws', '0', '--date', '2026-05-01'];
	const env = {
		PATH: process.env.PATH,
		HOME: home,
		XDG_CACHE_HOME: sharedCache,
		XDG_DATA_HOME: home,
		XDG_CONFIG_HOME: home,
	};
	const child = spawn(process.execPath, args, { env, stdio: ['ignore', 'ignore', 'pipe'] });
	let err = '';
	child.stderr.on('data', part => {
		err += part;
	});
	const done = once(child, 'close').then(([status]) => ({ status: status as number | null, err }));
	return { sheet, child, done };
}

const moment = (ms: number) => new Promise(resolve => setTimeout(resolve, ms));

let usual: number | undefined;

/** How long one takes here now, ms: moments are drawn from a little more than that. */
async function usualTime(): Promise<number> {
	if (usual !== undefined) return usual;
	const start = performance.now();
	const { status, err } = await applying().done;
	expect(status, err).toBe(0);
	usual = performance.now() - start;
	return usual;
}

test('another program saves while a log is written into the sheet: neither loses anything', async () => {
	const next = chance(seed);
	const most = 1.2 * (await usualTime());
	const ends = { first: 0, kept: 0 };
	for (let n = 0; n < counts.appliedLogs; n++) {
		const { sheet, done } = applying();
		await moment(next() * most);
		// The other program, such as an interview in a second window: it adds a note to what it reads, and tries until it has.
		for (;;) {
			const { text, mark } = readWhole(sheet);
			const noted = JSON.stringify({ ...JSON.parse(text), name: `saved ${n}` });
			if (saveWhole(sheet, noted, mark).result === 'saved') break;
		}
		const { status, err } = await done;
		const files = readdirSync(join(sheet, '..')).filter(name => name.endsWith('.json'));
		const last = sheetAt(sheet);
		const what = `${status} ${files} ${err}`;
		expect(last.name, what).toBe(`saved ${n}`);
		if (status === 0) {
			expect(last.logs, what).toHaveLength(1);
			ends.first++;
		} else {
			// The log came second: it left the sheet alone, and what it would have written is beside it.
			expect(status, what).toBe(2);
			expect(err).toContain('another program wrote the sheet meanwhile');
			expect(last.logs ?? [], what).toEqual([]);
			expect(sheetAt(sheet.replace('.json', '.yours-1.json')).logs, what).toHaveLength(1);
			ends.kept++;
		}
	}
	console.info(`${counts.appliedLogs} logs applied beside another program: ${JSON.stringify(ends)}`);
	expect(ends.first + ends.kept).toBe(counts.appliedLogs);
}, 3_600_000);

test('a log command killed at any moment leaves the sheet from before, or the one with the log, whole', async () => {
	const next = chance(seed + 1);
	const most = 1.1 * (await usualTime());
	let written = 0;
	for (let n = 0; n < counts.appliedLogs; n++) {
		const { sheet, child, done } = applying();
		await moment(next() * most);
		child.kill('SIGKILL');
		await done;
		const text = readFileSync(sheet, 'utf8');
		if (text === before) continue;
		expect(sheetAt(sheet).logs).toHaveLength(1);
		expect(existsSync(sheet)).toBe(true);
		written++;
	}
	console.info(`${counts.appliedLogs} kills of a log command, ${written} of them after the save`);
}, 3_600_000);
