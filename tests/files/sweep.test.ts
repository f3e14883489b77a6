import { mkdirSync, readdirSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { fileSystem } from '../../src/files/file-system.ts';
import { tempPath } from '../../src/files/names.ts';
import { sweep } from '../../src/files/sweep.ts';
import { temporaryFolder } from '../support/folder.ts';

const dead = { ...fileSystem, pid: 999_999_999 };
const elsewhere = { ...dead, host: 'other' };

function folderWith(...paths: ((path: string) => string)[]) {
	const folder = temporaryFolder();
	const files = paths.map(path => path(join(folder, 'mule.json')));
	for (const file of files) writeFileSync(file, 'half');
	return { folder, files };
}

test('half-written files of dead processes go; those of running ones and of other computers stay', () => {
	const { folder, files } = folderWith(
		path => tempPath(path, dead),
		path => tempPath(path, fileSystem),
		path => tempPath(path, elsewhere),
	);
	sweep(folder);
	expect(
		readdirSync(folder)
			.map(name => join(folder, name))
			.sort(),
	).toEqual(files.slice(1).sort());
});

test('whoever wrote it, a half-written file is gone after a day', () => {
	const { folder, files } = folderWith(
		path => tempPath(path, fileSystem),
		path => tempPath(path, elsewhere),
	);
	for (const file of files) utimesSync(file, Date.now() / 1000, Date.now() / 1000 - 86_500);
	sweep(folder);
	expect(readdirSync(folder)).toEqual([]);
});

test('nothing else is touched, however much it looks like one', () => {
	const folder = temporaryFolder();
	const host = tempPath('mule.json', dead).split('.').at(-2)!.split('-')[0];
	const others = [
		'mule.json',
		'.mule.json.lock',
		'.mule.json.last-good',
		'notes.tmp',
		'.notes.tmp',
		`.a.${host}-999999999.tmp`,
	];
	for (const name of others) writeFileSync(join(folder, name), '');
	const sub = tempPath(join(folder, 'mule.json'), dead);
	mkdirSync(sub);
	sweep(folder);
	expect(readdirSync(folder)).toHaveLength(others.length + 1);
});

test('a folder that is not there, or cannot be swept, does not stop the program', () => {
	expect(() => sweep('/nowhere/at/all')).not.toThrow();
});
