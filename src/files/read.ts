import { crypto } from './crypto.ts';
import { type FileSystem, fileSystem } from './file-system.ts';
import type { Place } from './paths.ts';
import { asFileProblems, asProblem, FileProblem } from './problem.ts';
import { decode } from './text.ts';

/** The largest file that is read or saved, in bytes: 16 MB. A sheet of a thorough build has 100 kB. */
export const largest = 16 * 1024 * 1024;

/** Stands for exact bytes (their SHA-256): two files with one mark are the same file. */
export type ContentHash = string & { readonly __mark: true };

/** A text that was read. */
export interface Read {
	readonly text: string;
	/** What `saveWhole` wants to know: the bytes this text was read from. Worked out when it is first asked for. */
	readonly mark: ContentHash;
}

/**
 * A file's whole text.
 *
 * @param limit the largest size taken, in bytes
 * @throws FileProblem when it is missing, a folder, a device, too large or not UTF-8 text
 */
export function readWhole(path: string, limit = largest, on: FileSystem = fileSystem): Read {
	return asFileProblems(path, () => {
		const entry = on.look(path, 'follow');
		if (entry?.kind === 'folder') throw new FileProblem(path, 'this is a folder', 'Name a file in it.');
		if (entry?.kind === 'other') {
			throw new FileProblem(path, 'this is a device or a pipe', 'Name a file, or pipe the text in and give - instead.');
		}
		const file = on.open(path, 'r');
		try {
			return checked(path, readBytes(file, limit, on), limit);
		} finally {
			on.close(file);
		}
	});
}

/**
 * A file's bytes, or those of standard input for `-`: for texts in any encoding.
 *
 * @throws FileProblem as `readWhole` does, but for the encoding
 */
export function readRaw(path: string, limit = largest, on: FileSystem = fileSystem): Buffer {
	const name = path === '-' ? 'standard input' : path;
	return asFileProblems(name, () => {
		if (path === '-') return withinLimit(name, readBytes(0, limit, on), limit);
		const kind = on.look(path, 'follow')?.kind;
		if (kind === 'folder') throw new FileProblem(path, 'this is a folder', 'Name a file in it.');
		const file = on.open(path, 'r');
		try {
			return withinLimit(path, readBytes(file, limit, on), limit);
		} finally {
			on.close(file);
		}
	});
}

/** The same, or null when it cannot be read, whatever the reason. */
export function textOf(path: string): string | null {
	try {
		return readWhole(path).text;
	} catch (error) {
		asProblem(path, error);
		return null;
	}
}

/** The text of what SHEET means: of the file, or of standard input. Errors as in `readWhole`. */
export function readPlace(place: Place, on: FileSystem = fileSystem): Read {
	if (place.kind !== 'stdin') return readWhole(place.path, largest, on);
	const name = 'standard input';
	return asFileProblems(name, () => checked(name, readBytes(0, largest, on), largest));
}

function checked(path: string, bytes: Buffer, limit: number): Read {
	withinLimit(path, bytes, limit);
	let mark: ContentHash | undefined;
	return {
		text: decode(path, bytes),
		get mark() {
			return (mark ??= hashOf(bytes));
		},
	};
}

function withinLimit(path: string, bytes: Buffer, limit: number): Buffer {
	if (bytes.length > limit) {
		const most = limit >= 2 ** 20 ? `${limit / 2 ** 20} MB` : `${limit} bytes`;
		throw new FileProblem(path, `this is larger than ${most}`, 'Name the right file: no sheet grows that large.');
	}
	return bytes;
}

/** The mark of some bytes. */
export function hashOf(bytes: Uint8Array): ContentHash {
	return crypto().createHash('sha256').update(bytes).digest('hex') as ContentHash;
}

/** Everything that is left in an open file; of one above the limit a little more than the limit. */
export function readBytes(file: number, limit: number, on: FileSystem): Buffer {
	const parts: Uint8Array[] = [];
	for (let total = 0; total <= limit; ) {
		const part = new Uint8Array(64 * 1024);
		const count = readSome(file, part, on);
		if (count === 0) break;
		parts.push(part.subarray(0, count));
		total += count;
	}
	return Buffer.concat(parts);
}

function readSome(file: number, into: Uint8Array, on: FileSystem): number {
	for (;;) {
		try {
			return on.read(file, into);
		} catch (error) {
			const code = (error as NodeJS.ErrnoException).code;
			// A closed pipe on Windows.
			if (code === 'EOF') return 0;
			// Standard input that does not wait by itself, and has nothing yet.
			if (code !== 'EAGAIN') throw error;
			on.pause(5);
		}
	}
}
