import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { counts } from '../counts.ts';
import { bundle } from '../support/bundle.ts';
import { temporaryFolder } from '../support/folder.ts';
import { countOf, sheetOf } from './sheet.ts';

test('two programs that save one sheet lose no update', async () => {
	const child = await bundle(new URL('saver.ts', import.meta.url), temporaryFolder());
	const folder = temporaryFolder();
	const path = join(folder, 'mule.json');
	writeFileSync(path, sheetOf(0));
	const reports = await Promise.all([1, 2].map(() => add(child, path)));
	expect(countOf(readFileSync(path, 'utf8'))).toBe(2 * counts.increments);
	// No count was saved twice, and the two did take turns.
	expect(new Set(reports.flat()).size).toBe(2 * counts.increments);
	expect(Math.max(...reports[0]!) > reports[1]![0]! && Math.max(...reports[1]!) > reports[0]![0]!).toBe(true);
	expect(readdirSync(folder).sort()).toEqual(['.mule.json.last-good', 'mule.json']);
}, 600_000);

async function add(child: string, path: string): Promise<number[]> {
	const adding = spawn(process.execPath, [child, 'add', path, String(counts.increments)], {
		stdio: ['ignore', 'pipe', 'inherit'],
	});
	let reports = '';
	adding.stdout.on('data', part => {
		reports += part;
	});
	const [status] = await once(adding, 'close');
	expect(status).toBe(0);
	return reports.trim().split('\n').map(Number);
}
