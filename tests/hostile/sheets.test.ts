import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { isForPerson } from '../../src/cli/process/exit.ts';
import { type Opened, openSheet } from '../../src/cli/sheet/sheet.ts';
import { writeSheet } from '../../src/sheet/write.ts';
import { counts, seed } from '../counts.ts';
import { chance } from '../support/chance.ts';
import { temporaryFolder } from '../support/folder.ts';
import { testModel } from '../support/model.ts';
import { brokenFiles, full } from './broken-files.ts';

// A real full sheet, spoilt in every way that a disk, a merge, an editor or a hand knows. Each is read as the commands
// read it: what comes out is a whole sheet or an error that names the place, and the file stays as it is.

const { questions } = testModel().rulebook;
const bytes = Buffer.from(full);
const lines = full.split('\n');

/** A seeded choice of the places 0 to count - 1; in a long run all of them. */
function places(count: number): number[] {
	if (counts.sheetPlaces >= count) return Array.from({ length: count }, (_, at) => at);
	const next = chance(seed);
	return Array.from({ length: counts.sheetPlaces }, () => Math.floor(next() * count));
}

/** Reads each as the commands do, in a folder of its own; gives which were taken. */
function readEach(spoilt: Iterable<readonly [what: string, content: string | Buffer]>): string[] {
	const path = join(temporaryFolder(), 'mule.json');
	const taken: string[] = [];
	for (const [what, content] of spoilt) {
		const before = Buffer.from(content);
		writeFileSync(path, before);
		const opened = readOne(path, what);
		if (opened) {
			taken.push(what);
			expectWhole(opened, before, what);
		}
		expect(readFileSync(path).equals(before), what).toBe(true);
	}
	expect(readdirSync(join(path, '..'))).toEqual(['mule.json']);
	expect(Object.keys(Object.prototype)).toEqual([]);
	return taken;
}

function readOne(path: string, what: string): Opened | null {
	try {
		return openSheet(path, questions);
	} catch (error) {
		if (!isForPerson(error)) throw new Error(what, { cause: error });
		expect(error.message, what).toMatch(placed);
		return null;
	}
}

/** Line and column, line and byte, or the answer or key by its path; of a file that is none at all, what it is. */
const placed = /line \d+|^.{1,80}: found |: this is (?:larger than|UTF-16)/mu;

/** What is taken says when it is saved what it said before: nothing that stood in the file is dropped. */
function expectWhole({ sheet }: Opened, before: Buffer, what: string): void {
	const said = JSON.parse(before.toString('utf8').replace(/^\ufeff/, ''));
	const filled = { name: sheet.name, units: sheet.units, audits: [], ...said };
	expect(JSON.stringify(sorted(JSON.parse(writeSheet(sheet)))), what).toBe(JSON.stringify(sorted(filled)));
}

/** The same with the keys of the top in order: a sheet is written with its answers in their usual place. */
const sorted = (top: object) => Object.fromEntries(Object.entries(top).sort(([a], [b]) => (a < b ? -1 : 1)));

describe('a full sheet is read whole, or refused at a place, and never changed', () => {
	test('cut off after any byte', () => {
		const taken = readEach(places(bytes.length).map(at => [`cut at ${at}`, bytes.subarray(0, at)]));
		// Only the last line break may be missing.
		expect(taken.filter(what => what !== `cut at ${bytes.length - 1}`)).toEqual([]);
	});

	test('with one bit of any byte turned', () => {
		const bit = chance(seed + 1);
		const turned = places(bytes.length).map(at => {
			const copy = Buffer.from(bytes);
			copy[at]! ^= 1 << Math.floor(bit() * 8);
			return [`bit turned in byte ${at}`, copy] as const;
		});
		const taken = readEach(turned);
		// A digit or a letter of a note may become another one; most bytes hold the file together.
		expect(taken.length).toBeGreaterThan(0);
		expect(taken.length).toBeLessThan(turned.length / 2);
	});

	test('without any one line', () => {
		readEach(places(lines.length).map(at => [`without line ${at + 1}`, lines.toSpliced(at, 1).join('\n')]));
	});

	test('with any one line twice, as a merge may leave it', () => {
		const taken = readEach(places(lines.length).map(at => [lines[at]!, lines.toSpliced(at, 0, lines[at]!).join('\n')]));
		// Of two answers to one question neither is dropped in silence. What may stand twice is a part of a list.
		expect(taken.filter(line => /^\s*"\w+":/.test(line))).toEqual([]);
	});

	test('with a number of any answer grown out of all bounds', () => {
		const numbers = [...full.matchAll(/(?<=[ [])-?\d+(?:\.\d+)?(?=[,\]} \n])/g)];
		const grown = [
			'1e999',
			'-1e999',
			'1e308',
			'-1e308',
			'5e-324',
			'-0',
			'123456789012345678901234567890',
			`0.${'1'.repeat(400)}`,
		];
		readEach(
			places(numbers.length).map((at, index) => {
				const { index: start, 0: old } = numbers[at]!;
				const put = grown[index % grown.length]!;
				return [`${put} at ${start}`, full.slice(0, start) + put + full.slice(start + old.length)];
			}),
		);
	});

	test('with the keys of the language itself at every level', () => {
		const keys = ['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty'];
		const opens = [...full.matchAll(/\{/g)].map(({ index }) => index + 1);
		const taken = readEach(
			places(opens.length).map((at, index) => {
				const start = opens[at]!;
				const put = `"${keys[index % keys.length]}": {"polluted": true, "value": 1},`;
				return [`${put} at ${start}`, full.slice(0, start) + put + full.slice(start)];
			}),
		);
		// They stay where keys of others are kept: in the audits, and below a key of the top that is not ours.
		expect(taken.length).toBeLessThan(opens.length / 4);
	});
});

test.each(brokenFiles)('%s is refused at a place', (what, make) => {
	expect(readEach([[what, make()]])).toEqual([]);
});

test('with a mark of byte order, or with the line ends of another system, it is taken', () => {
	const crlf = full.replaceAll('\n', '\r\n');
	const files = [`\ufeff${full}`, crlf, `\ufeff${crlf}`].map(text => ['taken', text] as const);
	expect(readEach(files)).toEqual(['taken', 'taken', 'taken']);
});

test('lone halves of characters in free text are taken, kept and written as they were', () => {
	const odd = full.replace('"name": "', '"name": "\\ud800 \\udfff \\u202e \\u0000 ');
	expect(readEach([['escaped', odd]])).toEqual(['escaped']);
});
