import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { hashOf } from '../../src/files/read.ts';
import { saveWhole } from '../../src/files/save.ts';
import { sweep } from '../../src/files/sweep.ts';
import { counts, seed } from '../counts.ts';
import { bundle } from '../support/bundle.ts';
import { chance } from '../support/chance.ts';
import { quickClock } from '../support/clock.ts';
import { operationsOf } from '../support/faulty.ts';
import { temporaryFolder } from '../support/folder.ts';
import { countOf, sheetOf } from './sheet.ts';

const saver = () => bundle(new URL('saver.ts', import.meta.url), temporaryFolder());
const temps = (folder: string) => readdirSync(folder).filter(name => name.endsWith('.tmp'));

test('a program killed at a random moment leaves the last sheet saved, or the next one, whole', async () => {
	const child = await saver();
	const inSave = await Promise.all([1, 2].map(lane => killMany(child, counts.kills / 2, chance(seed + lane))));
	console.info(`${counts.kills} kills, ${inSave[0]! + inSave[1]!} of them in the middle of a save`);
	// If few were hit in the middle of a save, this test would prove little.
	expect(inSave[0]! + inSave[1]!).toBeGreaterThan(counts.kills / 30);
}, 3_600_000);

/** Kills one saving program after the other on the same sheet; gives how many left a half-written file behind. */
async function killMany(child: string, kills: number, next: () => number): Promise<number> {
	const folder = temporaryFolder();
	const path = join(folder, 'mule.json');
	writeFileSync(path, sheetOf(0));
	let last = 0;
	let inSave = 0;
	for (let kill = 0; kill < kills; kill++) {
		const said = await killOne(child, path, 1 + Math.floor(next() * 4), next() * 2);
		const count = countOf(readFileSync(path, 'utf8'));
		expect(count).toBeGreaterThanOrEqual(said ?? last);
		// It may have saved once more without having said so.
		if (said !== null) expect(count).toBeLessThanOrEqual(said + 1);
		last = count;
		if (temps(folder).length > 0) inSave++;
	}
	sweep(folder);
	expect(temps(folder)).toEqual([]);
	return inSave;
}

/** Kills it so many ms (of work, not of sleep) after it has reported so many saves; gives the last count it reported. */
async function killOne(child: string, path: string, saves: number, ms: number): Promise<number | null> {
	const saving = spawn(process.execPath, [child, 'until killed', path]);
	let output = '';
	let wrong = '';
	saving.stderr.on('data', part => {
		wrong += part;
	});
	saving.stdout.on('data', part => {
		output += part;
		if (output.split('\n').length <= saves || saving.killed) return;
		for (const until = performance.now() + ms; performance.now() < until; );
		saving.kill('SIGKILL');
	});
	const [, signal] = await once(saving, 'close');
	expect(wrong).toBe('');
	expect(signal).toBe('SIGKILL');
	const lines = output.split('\n').slice(0, -1);
	return lines.length > 0 ? Number(lines.at(-1)) : null;
}

test('a program killed before any one operation of a save leaves the old sheet or the new one, and no lock that holds', async () => {
	const child = await saver();
	const folder = temporaryFolder();
	const path = join(folder, 'mule.json');
	const mark = (count: number) => hashOf(Buffer.from(sheetOf(count)));
	writeFileSync(path, sheetOf(0));
	const operations = operationsOf(on => void saveWhole(path, sheetOf(1), mark(0), on));
	expect(operations).toBeGreaterThan(20);
	const left = new Set<number>();
	const waits: number[] = [];
	for (let n = 1; n <= operations; n += counts.killEvery) {
		writeFileSync(path, sheetOf(1));
		const died = spawnSync(process.execPath, [child, 'die before operation', path, String(n)]);
		expect(died.stderr.toString()).toBe('');
		expect(died.signal).toBe('SIGKILL');
		const count = countOf(readFileSync(path, 'utf8'));
		left.add(count);
		const { on, waited } = quickClock();
		expect(saveWhole(path, sheetOf(1), mark(count), on).result).toBe('saved');
		if (waited() > 0) waits.push(waited());
	}
	// Only a lock that does not yet say whose it is has to grow old first: a second.
	expect(waits.length).toBeLessThanOrEqual(1);
	expect(Math.max(0, ...waits)).toBeLessThan(1100);
	expect(left).toEqual(new Set([1, 2]));
	sweep(folder);
	expect(readdirSync(folder).sort()).toEqual(['.mule.json.last-good', 'mule.json']);
});
