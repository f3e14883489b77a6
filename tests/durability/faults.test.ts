import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type FileSystem, fileSystem } from '../../src/files/file-system.ts';
import { writeOutput } from '../../src/files/output.ts';
import { FileProblem } from '../../src/files/problem.ts';
import { hashOf } from '../../src/files/read.ts';
import { type Saved, saveWhole } from '../../src/files/save.ts';
import { quickClock } from '../support/clock.ts';
import { type Operation, operationsOf, systemError, watched } from '../support/faulty.ts';
import { temporaryFolder } from '../support/folder.ts';

const old = 'old '.repeat(2000);
const young = 'new '.repeat(2000);
const oldMark = hashOf(Buffer.from(old));
/** Disk error, disk full, no permission, read-only disk. */
const codes = ['EIO', 'ENOSPC', 'EACCES', 'EROFS'];

interface SavePath {
	name: string;
	/** What the file holds before, and when the work is done. */
	before: string | null;
	done: string;
	prepare?: (folder: string) => void;
	work: (folder: string, on: FileSystem) => FileProblem | null;
}

const sheetIn = (folder: string) => join(folder, 'mule.json');
const savePaths: SavePath[] = [
	{
		name: 'a save',
		before: old,
		done: young,
		work: (folder, on) => outcome(saveWhole(sheetIn(folder), young, oldMark, on)),
	},
	{
		name: 'a first save',
		before: null,
		done: young,
		work: (folder, on) => outcome(saveWhole(sheetIn(folder), young, null, on)),
	},
	{
		name: 'a save over an edit by hand',
		before: old,
		done: old,
		work: (folder, on) => outcome(saveWhole(sheetIn(folder), young, null, on)),
	},
	{
		name: 'a save through a link',
		before: old,
		done: young,
		prepare: folder => symlinkSync('mule.json', join(folder, 'link.json')),
		work: (folder, on) => outcome(saveWhole(join(folder, 'link.json'), young, oldMark, on)),
	},
	{
		name: 'a save after a program died in the middle of one',
		before: old,
		done: young,
		prepare: folder => writeFileSync(join(folder, '.mule.json.lock'), deadLock),
		work: (folder, on) => outcome(saveWhole(sheetIn(folder), young, oldMark, on)),
	},
	{
		name: 'an audit',
		before: old,
		done: young,
		work(folder, on) {
			writeOutput(sheetIn(folder), young, {}, on);
			return null;
		},
	},
];
/** Its process has our own number, so it is of an earlier process. */
const deadLock = JSON.stringify({ token: 'gone', pid: process.pid, host: fileSystem.host, since: Date.now() });

describe.each(savePaths)('$name', ({ before, done, prepare, work }) => {
	function attempt(on: FileSystem) {
		const folder = join(root(), String(attempts++));
		mkdirSync(folder);
		if (before !== null) writeFileSync(sheetIn(folder), before);
		prepare?.(folder);
		const problem = problemOf(() => work(folder, on));
		const after = existsSync(sheetIn(folder)) ? readFileSync(sheetIn(folder), 'utf8') : null;
		const temps = readdirSync(folder).filter(name => name.endsWith('.tmp'));
		return { folder, problem, after, temps };
	}
	let attempts = 0;
	let made: string | undefined;
	const root = () => {
		made ??= temporaryFolder();
		return made;
	};
	const fresh = () => {
		made = undefined;
	};
	const operations = () => operationsOf(on => void attempt(on));

	test.each(codes)('reports %s at any operation and leaves the old bytes', code => {
		fresh();
		const reported = new Set<Operation>();
		for (let n = operations(); n > 0; n--) {
			let failed: Operation | undefined;
			const { folder, problem, after, temps } = attempt(
				watched((at, operation) => {
					if (at !== n) return;
					failed = operation;
					throw systemError(code);
				}),
			);
			if (problem === null) {
				expect(after, `${failed}, number ${n}`).toBe(done);
			} else {
				reported.add(failed!);
				expect(problem).toMatchObject({ code });
				expect(after, `${failed}, number ${n}`).toBe(problem.message.includes('did not confirm') ? done : before);
			}
			if (failed !== 'unlink') expect(temps).toEqual([]);
			// Nothing is in the way of the next save.
			const { on, waited } = quickClock();
			const mark = after === null ? null : hashOf(Buffer.from(after));
			expect(saveWhole(sheetIn(folder), 'next', mark, on).result).toBe('saved');
			expect(waited()).toBe(0);
		}
		expect([...reported]).toEqual(
			expect.arrayContaining(['open', 'write', 'flush', 'close', 'rename', 'flushFolder', 'look']),
		);
	});

	test('leaves whole bytes when the disk goes away in the middle and stays away', () => {
		fresh();
		for (let n = operations(); n > 0; n--) {
			const gone = watched(at => {
				if (at >= n) throw systemError('EIO');
			});
			const { problem, after } = attempt(gone);
			if (problem === null) expect(after).toBe(done);
			else expect(after).toBe(problem.message.includes('did not confirm') ? done : before);
		}
	});

	test('leaves the old bytes when the disk fills up after any number of bytes', () => {
		fresh();
		let full = 0;
		for (let room = 0; room < 20_000; room += 331) {
			const { problem, after, temps } = attempt(smallDisk(room));
			if (problem !== null) {
				full++;
				expect(problem.code).toBe('ENOSPC');
				expect(problem.message).toContain('the disk is full');
			}
			expect(after).toBe(problem === null ? done : before);
			expect(temps).toEqual([]);
		}
		expect(full).toBeGreaterThan(20);
	});
});

/** A disk with room for so many bytes: the last write that fits takes fewer than it was given, as the system does it. */
function smallDisk(room: number): FileSystem {
	let left = room;
	return {
		...fileSystem,
		write(file, bytes) {
			if (left === 0) throw systemError('ENOSPC');
			const count = fileSystem.write(file, bytes.subarray(0, left));
			left -= count;
			return count;
		},
	};
}

/** What a save shows with its result: that it is in place, but the disk did not confirm it. */
function outcome(saved: Saved): FileProblem | null {
	return saved.result === 'saved' ? saved.unconfirmed : null;
}

/** What was thrown or reported. */
function problemOf(work: () => FileProblem | null): FileProblem | null {
	try {
		return work();
	} catch (error) {
		if (error instanceof FileProblem) return error;
		throw error;
	}
}
