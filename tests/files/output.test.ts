import { chmodSync, mkdirSync, readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { safeName, writeOutput } from '../../src/files/output.ts';
import { FileProblem } from '../../src/files/problem.ts';
import { seed } from '../counts.ts';
import { systemError, watched } from '../support/faulty.ts';
import { temporaryFolder } from '../support/folder.ts';

test('an audit is written with its pictures beside it, over those that are there', () => {
	const folder = temporaryFolder();
	const path = join(folder, 'Meine Prüfung.md');
	writeFileSync(path, 'old');
	chmodSync(path, 0o600);
	writeOutput(path, 'new', { 'limits.svg': '<svg/>', 'map.png': Uint8Array.of(1, 2, 3) });
	expect(readFileSync(path, 'utf8')).toBe('new');
	expect(statSync(path).mode & 0o777).toBe(0o600);
	expect(readFileSync(join(folder, 'limits.svg'), 'utf8')).toBe('<svg/>');
	expect([...readFileSync(join(folder, 'map.png'))]).toEqual([1, 2, 3]);
	expect(readdirSync(folder)).toHaveLength(3);
});

test.each([
	'../limits.svg',
	'/limits.svg',
	'a/b.svg',
	'..',
	'.hidden',
	'',
	'a\\b.svg',
	'nul.svg',
	'a b.svg',
	'audit.md',
])('%j is refused as a picture, and nothing is written', name => {
	const folder = temporaryFolder();
	expect(() => writeOutput(join(folder, 'audit.md'), 'new', { 'good.svg': '', [name]: '' })).toThrow(FileProblem);
	expect(readdirSync(folder)).toEqual([]);
});

test('a link in the place of a picture is not written through', () => {
	const folder = temporaryFolder();
	writeFileSync(join(folder, 'precious'), 'precious');
	symlinkSync('precious', join(folder, 'limits.svg'));
	expect(() => writeOutput(join(folder, 'audit.md'), 'new', { 'limits.svg': '' })).toThrow('a link is in the place');
	expect(readFileSync(join(folder, 'precious'), 'utf8')).toBe('precious');
});

test('a folder, a device and a missing folder are refused in words', () => {
	const folder = temporaryFolder();
	mkdirSync(join(folder, 'audit.md'));
	expect(() => writeOutput(join(folder, 'audit.md'), 'new')).toThrow('this is a folder');
	expect(() => writeOutput('/dev/null', 'new')).toThrow('a device');
	expect(() => writeOutput(join(folder, 'none', 'audit.md'), 'new')).toThrow(
		'Check the spelling, and that the folder exists.',
	);
});

test('a picture that cannot be written leaves the audit as it was', () => {
	const folder = temporaryFolder();
	const path = join(folder, 'audit.md');
	writeFileSync(path, 'old');
	const on = watched((_, operation) => {
		if (operation === 'rename') throw systemError('ENOSPC');
	});
	expect(() => writeOutput(path, 'new', { 'limits.svg': '' }, on)).toThrow('limits.svg: the disk is full');
	expect(readFileSync(path, 'utf8')).toBe('old');
	expect(readdirSync(folder)).toEqual(['audit.md']);
});

test.each([
	['Workshop mule', 'Workshop-mule'],
	['Käfer été', 'Kafer-ete'],
	['../../etc/passwd', 'etc-passwd'],
	['a..b', 'a..b'],
	['💀', 'audit'],
	['CON', '_CON'],
	['x'.repeat(300), 'x'.repeat(80)],
])('%j becomes the name %s', (text, name) => {
	expect(safeName(text)).toBe(name);
});

test('a name made of any text is plain, and stays the same when made again', () => {
	fc.assert(
		fc.property(fc.string({ unit: 'binary', maxLength: 120 }), text => {
			const name = safeName(text);
			expect(name).toMatch(/^[A-Za-z0-9_][A-Za-z0-9._-]{0,79}$/);
			expect(safeName(name)).toBe(name);
		}),
		{ seed, numRuns: 1000 },
	);
});
