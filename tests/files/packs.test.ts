import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readTexts } from '../../src/files/packs.ts';
import { temporaryFolder } from '../support/folder.ts';

test('a pack is one file, whatever its ending, or the files under a folder, in the order of their paths', () => {
	const pack = temporaryFolder();
	mkdirSync(join(pack, 'fuel'));
	mkdirSync(join(pack, '.git'));
	for (const name of ['b.yaml', 'a.yml', 'fuel/pump.yaml', 'read-me.md', '.hidden.yaml', '.git/x.yaml']) {
		writeFileSync(join(pack, name), name);
	}
	const texts = (path: string) => readTexts(path, ['.yaml', '.yml']).map(({ text }) => text);
	expect(texts(pack)).toEqual(['a.yml', 'b.yaml', 'fuel/pump.yaml']);
	expect(texts(join(pack, 'read-me.md'))).toEqual(['read-me.md']);
});

test('what is missing or cannot be read is a problem with its path', () => {
	const pack = temporaryFolder();
	expect(() => readTexts(join(pack, 'none'), ['.yaml'])).toThrow('no such file');
	writeFileSync(join(pack, 'bad.yaml'), Buffer.from([0xff]));
	expect(() => readTexts(pack, ['.yaml'])).toThrow('bad.yaml: bytes that are not UTF-8');
});

test('a folder is read once, however many links lead to it', () => {
	const pack = temporaryFolder();
	mkdirSync(join(pack, 'fuel'));
	writeFileSync(join(pack, 'fuel', 'pump.yaml'), 'x');
	// Each link doubles the ways through the folder: 60 of them have more than anybody could walk.
	for (let n = 0; n < 60; n++) symlinkSync('.', join(pack, `link-${n}`));
	for (let n = 0; n < 60; n++) symlinkSync('..', join(pack, 'fuel', `link-${n}`));
	expect(readTexts(pack, ['.yaml'])).toHaveLength(1);
});

test('a pack is bounded: folders, files and text, before all of it is read', () => {
	const deep = temporaryFolder();
	mkdirSync(join(deep, ...Array(9).fill('in')), { recursive: true });
	expect(() => readTexts(deep, ['.yaml'])).toThrow('folders more than 8 deep');
	const many = temporaryFolder();
	for (let n = 0; n <= 500; n++) writeFileSync(join(many, `${n}.yaml`), '');
	expect(() => readTexts(many, ['.yaml'])).toThrow('more than 500 files');
	const long = temporaryFolder();
	for (const name of ['a.yaml', 'b.yaml']) writeFileSync(join(long, name), 'x'.repeat(60));
	expect(() => readTexts(long, ['.yaml'], 100)).toThrow('more than 100 characters');
	expect(readTexts(long, ['.yaml'], 120)).toHaveLength(2);
});
