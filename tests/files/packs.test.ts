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

test('what is missing, cannot be read, or goes round is a problem with its path', () => {
	const pack = temporaryFolder();
	expect(() => readTexts(join(pack, 'none'), ['.yaml'])).toThrow('no such file');
	writeFileSync(join(pack, 'bad.yaml'), Buffer.from([0xff]));
	expect(() => readTexts(pack, ['.yaml'])).toThrow('bad.yaml: bytes that are not UTF-8');
	symlinkSync('.', join(pack, 'round'));
	expect(() => readTexts(pack, ['.yaml'])).toThrow('folders more than 8 deep');
});
