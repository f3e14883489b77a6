import { dirname, parse } from 'node:path';
import { resolveTarget, type Target, withTemp } from './atomic-write.ts';
import { type FileSystem, fileSystem } from './file-system.ts';
import { keepLastGood } from './last-good.ts';
import { withLock } from './lock.ts';
import { sibling } from './names.ts';
import { asFileProblems, asProblem, FileProblem, unconfirmed } from './problem.ts';
import { type ContentHash, hashOf, largest, readBytes } from './read.ts';

/** What came of a save. */
export type Saved =
	/** The text is in the file. `unconfirmed` is not null when the disk did not say that it will outlast a power cut. */
	| { result: 'saved'; mark: ContentHash; unconfirmed: FileProblem | null }
	/** Somebody else wrote the file, or took it away: it was left alone, and the text was put into `yours` beside it. */
	| { result: 'changed'; found: 'other' | 'gone'; yours: string };

/**
 * Saves a text whole or not at all: whatever happens, power loss included, the file holds the old bytes or the new.
 *
 * A symbolic link is followed once, a link to a link refused. Mode and owner are kept; hard links and access lists are not.
 * Synchronous, so that it also works while a signal ends the program. Waits at most 2 seconds for another program's save.
 * Why no library does it: tests/bench/README.md.
 *
 * @param expected the mark from the last read or save, or null when there was no file
 * @throws FileProblem when the system refuses; its message says in what state the file is
 */
export function saveWhole(
	path: string,
	text: string,
	expected: ContentHash | null,
	on: FileSystem = fileSystem,
): Saved {
	const bytes = Buffer.from(text, 'utf8');
	if (bytes.length > largest) throw new FileProblem(path, 'this would be larger than 16 MB', 'Shorten the notes.');
	const saveLocked = (to: Target, stillMine: () => void): Saved =>
		withTemp(to, bytes, on, 'flush', temp => {
			// Compared last, so that little time is left for somebody to write in between.
			const found = markOnDisk(to.path, on);
			stillMine();
			if (found !== expected) {
				return { result: 'changed', found: found === null ? 'gone' : 'other', yours: keepYours(temp, to.path, on) };
			}
			on.rename(temp, to.path);
			return { result: 'saved', mark: hashOf(bytes), unconfirmed: flushed(to.path, on) };
		});
	const save = (): Saved => {
		const to = resolveTarget(path, on);
		return withLock(to.path, on, stillMine => {
			const saved = saveLocked(to, stillMine);
			if (saved.result === 'saved') keepLastGood(to, bytes, on);
			return saved;
		});
	};
	return asFileProblems(path, save, 'The file is as it was.');
}

/** Opened for writing, so that a file that may not be written is not replaced either. */
function markOnDisk(path: string, on: FileSystem): ContentHash | null {
	if (on.look(path, 'the link itself') === null) return null;
	const file = on.open(path, 'r+');
	try {
		return hashOf(readBytes(file, largest, on));
	} finally {
		on.close(file);
	}
}

/** Too late to fail: the new text is in place. */
function flushed(path: string, on: FileSystem): FileProblem | null {
	try {
		on.flushFolder(dirname(path));
		return null;
	} catch (error) {
		return asProblem(path, error, unconfirmed);
	}
}

function keepYours(temp: string, path: string, on: FileSystem): string {
	const { name, ext } = parse(path);
	const numbered = (n: number) => sibling(path, `${name}.yours-${n}${ext}`);
	let n = 1;
	while (on.look(numbered(n), 'the link itself') !== null) n++;
	on.rename(temp, numbered(n));
	on.flushFolder(dirname(path));
	return numbered(n);
}
