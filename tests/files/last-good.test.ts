import { readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { lastGoodAdvice } from '../../src/files/last-good.ts';
import { readWhole } from '../../src/files/read.ts';
import { saveWhole } from '../../src/files/save.ts';
import { systemError, watched } from '../support/faulty.ts';
import { temporaryFolder } from '../support/folder.ts';

function saved() {
	const folder = temporaryFolder();
	const path = join(folder, 'mule.json');
	const copy = join(folder, '.mule.json.last-good');
	saveWhole(path, 'good', null);
	return { folder, path, copy };
}

test('a copy of the last save is beside the sheet', () => {
	const { path, copy } = saved();
	expect(readFileSync(copy, 'utf8')).toBe('good');
	writeFileSync(path, 'broken by hand');
	expect(readFileSync(copy, 'utf8')).toBe('good');
});

test('for a broken sheet the advice names the copy and its time, also through a link', () => {
	const { folder, path, copy } = saved();
	writeFileSync(path, Buffer.from([0, 0, 0]));
	symlinkSync('mule.json', join(folder, 'link.json'));
	for (const name of [path, join(folder, 'link.json')]) {
		expect(lastGoodAdvice(name)).toMatch(/^As it was last saved, 20\d\d-\d\d-\d\d \d\d:\d\d UTC, it is in /);
		expect(lastGoodAdvice(name)).toContain(copy);
	}
});

test('there is no advice without a copy, with the same copy, or with a copy that cannot be read', () => {
	const { folder, path, copy } = saved();
	expect(lastGoodAdvice(join(folder, 'other.json'))).toBeNull();
	expect(lastGoodAdvice(path)).toBeNull();
	writeFileSync(path, 'broken');
	writeFileSync(copy, Buffer.from([0, 0]));
	expect(lastGoodAdvice(path)).toBeNull();
	expect(lastGoodAdvice(folder)).toBeNull();
});

test('a copy that cannot be written does not fail the save, and the older copy stays', () => {
	const { path, copy } = saved();
	let failed = 0;
	const on = watched((_, operation, [, to]) => {
		if (operation !== 'rename' || to !== copy) return;
		failed++;
		throw systemError('ENOSPC');
	});
	expect(saveWhole(path, 'second', readWhole(path).mark, on).result).toBe('saved');
	expect(failed).toBe(1);
	expect(readFileSync(copy, 'utf8')).toBe('good');
});
