import { execFileSync } from 'node:child_process';
import { mkdirSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fileSystem } from '../../src/files/file-system.ts';
import { FileProblem } from '../../src/files/problem.ts';
import { largest, readPlace, readWhole } from '../../src/files/read.ts';
import { seed } from '../counts.ts';
import { systemError } from '../support/faulty.ts';
import { temporaryFolder } from '../support/folder.ts';

function fileWith(content: string | Uint8Array): string {
	const path = join(temporaryFolder(), 'mule.json');
	writeFileSync(path, content);
	return path;
}

test('a text comes back as it was written, with the mark of its bytes', () => {
	const { text, mark } = readWhole(fileWith('{"name": "Käfer 🛠"}\n'));
	expect(text).toBe('{"name": "Käfer 🛠"}\n');
	expect(mark).toBe(readWhole(fileWith('{"name": "Käfer 🛠"}\n')).mark);
	expect(mark).not.toBe(readWhole(fileWith('{"name": "Käfer 🛠"}')).mark);
});

test('a byte order mark of UTF-8 is dropped, but it changes the mark', () => {
	const { text, mark } = readWhole(fileWith('\ufeff{}'));
	expect(text).toBe('{}');
	expect(mark).not.toBe(readWhole(fileWith('{}')).mark);
});

test.each([
	['UTF-16, little end first', Buffer.from('\ufeff{}', 'utf16le'), 'UTF-16'],
	['UTF-16, big end first', Buffer.from('\ufeff{}', 'utf16le').swap16(), 'UTF-16'],
	['a zero byte', Buffer.from('{\n\n "a\0"}'), 'zero byte at byte 6 (line 3)'],
	['a Latin-1 letter', Buffer.from('{\n"K\xe4fer"}', 'latin1'), 'not UTF-8 at byte 4 (line 2)'],
	['a sequence cut short', Buffer.from([0x41, 0xef, 0xbf, 0x41]), 'not UTF-8 at byte 1 (line 1)'],
	['a sequence cut short at the end', Buffer.from([0x41, 0x42, 0xf0, 0x9f]), 'not UTF-8 at byte 2 (line 1)'],
	['half of a pair', Buffer.from([0xed, 0xa0, 0x80]), 'not UTF-8 at byte 0 (line 1)'],
])('%s is refused with its place', (_, bytes, words) => {
	const path = fileWith(bytes);
	expect(() => readWhole(path)).toThrow(FileProblem);
	expect(() => readWhole(path)).toThrow(words);
	expect(() => readWhole(path)).toThrow('save it again as plain text in UTF-8');
});

test('the place named is where the first bad sequence begins, whatever stands around it', () => {
	const bad = fc.constantFrom(
		[0x80],
		[0xc0, 0xaf],
		[0xe2, 0x82],
		[0xed, 0xbf, 0xbf],
		[0xf0, 0x9f, 0x9b],
		[0xff],
		[0xf4, 0x90],
	);
	// A text whose characters are 1 to 4 bytes long, zero left out.
	const text = fc.string({ unit: fc.constantFrom('a', '\n', 'ä', '€', '🛠', '\ufffd') });
	const folder = temporaryFolder();
	fc.assert(
		fc.property(text, bad, text, (before, sequence, after) => {
			const path = join(folder, 'mule.json');
			writeFileSync(path, Buffer.concat([Buffer.from(before), Buffer.from(sequence), Buffer.from(`a${after}`)]));
			expect(() => readWhole(path)).toThrow(`at byte ${Buffer.byteLength(before)} (line ${before.split('\n').length})`);
		}),
		{ seed, numRuns: 300 },
	);
});

test('16 MB are read, one byte more is not', () => {
	const path = fileWith(Buffer.alloc(largest, ' '));
	expect(readWhole(path).text).toHaveLength(largest);
	truncateSync(path, largest + 1);
	expect(() => readWhole(path)).toThrow('this is larger than 16 MB');
	expect(() => readWhole(path, 10)).toThrow('this is larger than 10 bytes');
});

test('what is not a file is refused in words, without waiting for it', () => {
	const folder = temporaryFolder();
	mkdirSync(join(folder, 'folder.json'));
	execFileSync('mkfifo', [join(folder, 'pipe.json')]);
	symlinkSync('round.json', join(folder, 'round.json'));
	symlinkSync('nowhere', join(folder, 'dangling.json'));
	writeFileSync(join(folder, 'file'), '');
	expect(() => readWhole(join(folder, 'folder.json'))).toThrow('this is a folder. Name a file in it.');
	expect(() => readWhole(join(folder, 'pipe.json'))).toThrow('a device or a pipe');
	expect(() => readWhole('/dev/zero')).toThrow('a device or a pipe');
	expect(() => readWhole(join(folder, 'round.json'))).toThrow('go round in a circle');
	expect(() => readWhole(join(folder, 'dangling.json'))).toThrow('no such file');
	expect(() => readWhole(join(folder, 'none.json'))).toThrow('no such file');
	expect(() => readWhole(join(folder, 'file', 'x.json'))).toThrow(FileProblem);
});

test('a link is read through, and so is a link to a link', () => {
	const path = fileWith('{}');
	symlinkSync(path, `${path}.1`);
	symlinkSync(`${path}.1`, `${path}.2`);
	expect(readWhole(`${path}.2`).text).toBe('{}');
});

test('standard input is read to its end, in the pieces it comes in, and waited for', () => {
	const pieces = ['{"na', null, 'me": 1', null, '}', ''];
	let pauses = 0;
	const on = {
		...fileSystem,
		read(file: number, into: Uint8Array) {
			expect(file).toBe(0);
			const piece = pieces.shift();
			if (typeof piece !== 'string') throw systemError('EAGAIN');
			into.set(Buffer.from(piece));
			return piece.length;
		},
		pause() {
			pauses++;
		},
	};
	expect(readPlace({ kind: 'stdin' }, on).text).toBe('{"name": 1}');
	expect(pauses).toBe(2);
});

test('standard input without end is refused at 16 MB', () => {
	const on = { ...fileSystem, read: (_: number, into: Uint8Array) => into.fill(32).length };
	expect(() => readPlace({ kind: 'stdin' }, on)).toThrow('standard input: this is larger than 16 MB');
});

test('a bug is not dressed up as a problem with a file', () => {
	const on = {
		...fileSystem,
		look() {
			throw new TypeError('a bug');
		},
	};
	expect(() => readWhole('/x', undefined, on)).toThrow(TypeError);
});
