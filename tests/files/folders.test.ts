import { mkdirSync, statSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { listSheets, makeFolder } from '../../src/files/folders.ts';
import { FileProblem } from '../../src/files/problem.ts';
import { temporaryFolder } from '../support/folder.ts';

function put(folder: string, name: string, content: string | Uint8Array, second = 0): void {
	writeFileSync(join(folder, name), content);
	utimesSync(join(folder, name), second, second);
}

test('sheets are listed with their texts, the last changed first', () => {
	const folder = temporaryFolder();
	put(folder, 'old.json', '{"name": "old"}', 100);
	put(folder, 'young.json', '{"name": "young"}', 200);
	expect(listSheets(folder)).toEqual([
		{
			name: 'young',
			path: join(folder, 'young.json'),
			changed: new Date(200_000),
			text: '{"name": "young"}',
			problem: null,
		},
		{ name: 'old', path: join(folder, 'old.json'), changed: new Date(100_000), text: '{"name": "old"}', problem: null },
	]);
});

test('hidden files, other files, folders and dead links are left out', () => {
	const folder = temporaryFolder();
	for (const name of ['.hidden.json', 'notes.txt', 'mule.json']) put(folder, name, '');
	mkdirSync(join(folder, 'folder.json'));
	symlinkSync('nowhere', join(folder, 'dead.json'));
	symlinkSync('round.json', join(folder, 'round.json'));
	expect(listSheets(folder).map(({ name }) => name)).toEqual(['mule']);
});

test('a sheet that cannot be read is listed with what is wrong, and the others are still there', () => {
	const folder = temporaryFolder();
	put(folder, 'broken.json', Buffer.from([0]), 3);
	put(folder, 'huge.json', Buffer.alloc(1024 * 1024 + 1, ' '), 2);
	put(folder, 'mule.json', '{}', 1);
	const [broken, huge, mule] = listSheets(folder);
	expect(broken!.problem!.message).toContain('zero byte');
	expect(huge!.problem!.message).toContain('larger than 1 MB');
	expect(huge!.text).toBeNull();
	expect(mule!.text).toBe('{}');
});

test('at most a hundred are listed', () => {
	const folder = temporaryFolder();
	for (let i = 0; i < 105; i++) put(folder, `${i}.json`, '', i + 1);
	const listed = listSheets(folder).map(({ name }) => name);
	expect(listed).toHaveLength(100);
	expect(listed[0]).toBe('104');
});

test('no folder, no sheets; a folder that is a file is a problem', () => {
	const folder = temporaryFolder();
	put(folder, 'file', '');
	expect(listSheets(join(folder, 'none'))).toEqual([]);
	expect(() => listSheets(join(folder, 'file'))).toThrow(FileProblem);
});

test('a folder is made with those above it, for the person alone', () => {
	const folder = join(temporaryFolder(), 'a', 'b');
	makeFolder(folder);
	makeFolder(folder);
	expect(statSync(folder).mode & 0o777).toBe(0o700);
	writeFileSync(join(folder, 'file'), '');
	expect(() => makeFolder(join(folder, 'file', 'c'))).toThrow('a file, not a folder');
});
