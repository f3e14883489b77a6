import {
	chmodSync,
	chownSync,
	existsSync,
	lstatSync,
	mkdirSync,
	readdirSync,
	readFileSync,
	readlinkSync,
	rmSync,
	statSync,
	symlinkSync,
	writeFileSync,
} from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { fileSystem } from '../../src/files/file-system.ts';
import { FileProblem } from '../../src/files/problem.ts';
import { largest, readWhole } from '../../src/files/read.ts';
import { saveWhole } from '../../src/files/save.ts';
import { systemError, watched } from '../support/faulty.ts';
import { temporaryFolder } from '../support/folder.ts';

function sheet(text = 'old') {
	const folder = temporaryFolder();
	const path = join(folder, 'mule.json');
	writeFileSync(path, text);
	return { folder, path, mark: readWhole(path).mark };
}

test('a save gives the mark that the next save wants', () => {
	const { path, mark } = sheet();
	const first = saveWhole(path, 'one', mark);
	expect(first).toEqual({ result: 'saved', mark: readWhole(path).mark, unconfirmed: null });
	const second = saveWhole(path, 'two', readWhole(path).mark);
	expect(second.result).toBe('saved');
	expect(readFileSync(path, 'utf8')).toBe('two');
});

test('a sheet changed by hand is left alone, and your version is kept beside it under the next free number', () => {
	const { folder, path, mark } = sheet();
	writeFileSync(path, 'by hand');
	expect(saveWhole(path, 'mine', mark)).toEqual({
		result: 'changed',
		found: 'other',
		yours: join(folder, 'mule.yours-1.json'),
	});
	expect(saveWhole(path, 'mine too', mark)).toMatchObject({ yours: join(folder, 'mule.yours-2.json') });
	expect(readFileSync(path, 'utf8')).toBe('by hand');
	expect(readFileSync(join(folder, 'mule.yours-1.json'), 'utf8')).toBe('mine');
	expect(readFileSync(join(folder, 'mule.yours-2.json'), 'utf8')).toBe('mine too');
});

test('an edit of one byte, or of nothing but the byte order mark, is noticed', () => {
	for (const edit of ['olD', '\ufeffold']) {
		const { path, mark } = sheet();
		writeFileSync(path, edit);
		expect(saveWhole(path, 'mine', mark).result).toBe('changed');
	}
});

test('an edit made while the save writes is noticed too', () => {
	const { path, mark } = sheet();
	const on = watched((_, operation) => {
		if (operation === 'flush') writeFileSync(path, 'by hand');
	});
	expect(saveWhole(path, 'mine', mark, on).result).toBe('changed');
	expect(readFileSync(path, 'utf8')).toBe('by hand');
});

test('a save whose turn was taken over while the computer slept writes nothing, and looks anew at its next turn', () => {
	const { folder, path, mark } = sheet();
	let flushes = 0;
	const on = watched((_, operation) => {
		if (operation !== 'flush' || ++flushes > 1) return;
		writeFileSync(path, 'by the other');
		writeFileSync(
			join(folder, '.mule.json.lock'),
			JSON.stringify({ token: 'x', pid: 999_999_999, host: hostname(), since: 0 }),
		);
	});
	expect(saveWhole(path, 'mine', mark, on)).toMatchObject({ result: 'changed', found: 'other' });
	expect(readFileSync(path, 'utf8')).toBe('by the other');
});

test('a sheet that was taken away is not brought back', () => {
	const { folder, path, mark } = sheet();
	rmSync(path);
	expect(saveWhole(path, 'mine', mark)).toMatchObject({ result: 'changed', found: 'gone' });
	expect(existsSync(path)).toBe(false);
	expect(readFileSync(join(folder, 'mule.yours-1.json'), 'utf8')).toBe('mine');
});

test('a new sheet does not replace one that has come there meanwhile', () => {
	const { path } = sheet('somebody else');
	expect(saveWhole(path, 'mine', null).result).toBe('changed');
	expect(readFileSync(path, 'utf8')).toBe('somebody else');
});

test('two programs that write the same text do not both count as the one that saved it', () => {
	const { path, mark } = sheet();
	expect(saveWhole(path, 'same', mark).result).toBe('saved');
	expect(saveWhole(path, 'same', mark).result).toBe('changed');
});

test.each([0o600, 0o640, 0o664])('the mode is kept: %o', mode => {
	const { path, mark } = sheet();
	chmodSync(path, mode);
	saveWhole(path, 'new', mark);
	expect(statSync(path).mode & 0o7777).toBe(mode);
});

test('a private sheet is never readable by others, not even half-written or as a copy', () => {
	const { folder, path, mark } = sheet();
	chmodSync(path, 0o600);
	const on = watched(() => {
		for (const name of readdirSync(folder).filter(name => /\.(tmp|last-good)$/.test(name))) {
			expect(statSync(join(folder, name)).mode & 0o077, name).toBe(0);
		}
	});
	saveWhole(path, 'new', mark, on);
});

test.runIf(process.getuid?.() === 0)('the owner is kept when another user saves', () => {
	const { path, mark } = sheet();
	chownSync(path, 1234, 2345);
	saveWhole(path, 'new', mark);
	expect(statSync(path)).toMatchObject({ uid: 1234, gid: 2345 });
});

test('a disk that knows no owners and no modes can be saved to', () => {
	const { path, mark } = sheet();
	const refuse = () => {
		throw systemError('EPERM');
	};
	expect(saveWhole(path, 'new', mark, { ...fileSystem, chown: refuse, chmod: refuse }).result).toBe('saved');
});

test('a link stays a link, and what it points to is saved, with the hidden files beside it', () => {
	const { folder, path, mark } = sheet();
	mkdirSync(join(folder, 'desk'));
	const link = join(folder, 'desk', 'link.json');
	symlinkSync('../mule.json', link);
	expect(saveWhole(link, 'new', mark).result).toBe('saved');
	expect(readlinkSync(link)).toBe('../mule.json');
	expect(readFileSync(path, 'utf8')).toBe('new');
	expect(readdirSync(join(folder, 'desk'))).toEqual(['link.json']);
});

test('a link in a linked folder leads where the system says, not where the text of its path does', () => {
	const { folder, path, mark } = sheet();
	mkdirSync(join(folder, 'real'));
	mkdirSync(join(folder, 'far'));
	symlinkSync('../mule.json', join(folder, 'real', 'link.json'));
	symlinkSync('../real', join(folder, 'far', 'folder'));
	expect(saveWhole(join(folder, 'far', 'folder', 'link.json'), 'new', mark).result).toBe('saved');
	expect(readFileSync(path, 'utf8')).toBe('new');
	expect(readdirSync(join(folder, 'far'))).toEqual(['folder']);
});

test('a link to nothing yet makes the file it points to', () => {
	const { folder } = sheet();
	symlinkSync('later.json', join(folder, 'link.json'));
	expect(saveWhole(join(folder, 'link.json'), 'new', null).result).toBe('saved');
	expect(lstatSync(join(folder, 'later.json')).isFile()).toBe(true);
});

test('a link to a link, a folder and a device are refused, and nothing is written', () => {
	const { folder, path, mark } = sheet();
	symlinkSync('mule.json', join(folder, 'one.json'));
	symlinkSync('one.json', join(folder, 'two.json'));
	expect(() => saveWhole(join(folder, 'two.json'), 'new', mark)).toThrow('a link that a link points to');
	expect(() => saveWhole(folder, 'new', null)).toThrow('this is a folder');
	expect(() => saveWhole('/dev/null', 'new', null)).toThrow('a device or a pipe');
	expect(readFileSync(path, 'utf8')).toBe('old');
	expect(readdirSync(folder).sort()).toEqual(['mule.json', 'one.json', 'two.json']);
});

test('a sheet that may not be written is not replaced, though its folder may be', () => {
	const { folder, path, mark } = sheet();
	const on = watched((_, operation, [, flags]) => {
		if (operation === 'open' && flags === 'r+') throw systemError('EACCES');
	});
	expect(() => saveWhole(path, 'new', mark, on)).toThrow('does not allow it');
	expect(() => saveWhole(path, 'new', mark, on)).toThrow('The file is as it was.');
	expect(readdirSync(folder)).toEqual(['mule.json']);
});

test('a missing folder is reported, not made', () => {
	const { folder } = sheet();
	expect(() => saveWhole(join(folder, 'none', 'mule.json'), 'new', null)).toThrow(FileProblem);
	expect(existsSync(join(folder, 'none'))).toBe(false);
});

test('a text too large to be read again is not saved', () => {
	const { path, mark } = sheet();
	expect(() => saveWhole(path, ' '.repeat(largest + 1), mark)).toThrow('larger than 16 MB');
	expect(saveWhole(path, ' '.repeat(largest), mark).result).toBe('saved');
});
