import { statSync } from 'node:fs';
import { open, stat } from 'node:fs/promises';
import { crypto } from './crypto.ts';
import { asProblem, FileProblem } from './problem.ts';

/** A file or standard input as a stream of bytes, unpacked where it is gzip. */
export interface ByteStream {
	/** Each piece is good until the next is asked for. */
	readonly bytes: AsyncIterable<Uint8Array>;
	/** Bytes of the file read so far, before they were unpacked. */
	readonly taken: () => number;
	/** Bytes there are; null for a pipe. */
	readonly size: number | null;
	/** SHA-256 of the bytes read. */
	readonly sha256: () => string;
	/** Lets go of the file before its end. */
	readonly close: () => void;
}

/** Once so much was unpacked, it may be so many times what was read. Text of numbers packs 50 times smaller at most. */
const [unpackedFreely, mostTimes] = [64 * 1024 ** 2, 300];

/**
 * Opens a file to be read once, as it is now: what is added to it meanwhile is left out. `-` is standard input.
 *
 * @throws FileProblem when it is missing, a folder or a device, when it cannot be read or unpacked
 */
export async function openStream(path: string): Promise<ByteStream> {
	const stdin = path === '-';
	const name = stdin ? 'standard input' : path;
	const size = stdin ? null : await sizeOf(path);
	const hash = crypto().createHash('sha256');
	let taken = 0;
	let close = () => {};
	const raw = async function* (): AsyncGenerator<Uint8Array> {
		const pieces = stdin ? null : piecesOf(path, size ?? Number.POSITIVE_INFINITY);
		close = () => void (pieces ? pieces.return(undefined) : process.stdin.destroy());
		try {
			for await (const piece of pieces ?? process.stdin) {
				hash.update(piece);
				taken += piece.length;
				yield piece;
			}
		} catch (error) {
			throw asProblem(name, error);
		}
	};
	return {
		bytes: unpacked(raw(), name, () => taken),
		taken: () => taken,
		size,
		sha256: () => hash.digest('hex'),
		close: () => close(),
	};
}

/** Bytes of a file up to a size, in one buffer that is used again: a long file leaves nothing to be collected. */
async function* piecesOf(path: string, size: number): AsyncGenerator<Uint8Array> {
	const file = await open(path);
	try {
		const buffer = new Uint8Array(256 * 1024);
		for (let left = size; left > 0; ) {
			const { bytesRead } = await file.read(buffer, 0, Math.min(left, buffer.length));
			if (bytesRead === 0) return;
			left -= bytesRead;
			yield buffer.subarray(0, bytesRead);
		}
	} finally {
		await file.close();
	}
}

/** Bytes of a file; 0 where it cannot be asked, or is none. What is wrong with it shows when it is opened. */
export function sizeNow(path: string): number {
	try {
		const entry = statSync(path, { throwIfNoEntry: false });
		return entry?.isFile() ? entry.size : 0;
	} catch {
		return 0;
	}
}

async function sizeOf(path: string): Promise<number | null> {
	try {
		const entry = await stat(path);
		if (entry.isDirectory()) throw new FileProblem(path, 'this is a folder', 'Name a file in it.');
		return entry.isFile() ? entry.size : null;
	} catch (error) {
		throw asProblem(path, error);
	}
}

async function* unpacked(
	raw: AsyncGenerator<Uint8Array>,
	name: string,
	taken: () => number,
): AsyncGenerator<Uint8Array> {
	const first = await raw.next();
	if (first.done) return;
	const whole = async function* () {
		yield first.value;
		yield* raw;
	};
	if (!(first.value[0] === 0x1f && first.value[1] === 0x8b)) {
		yield* whole();
		return;
	}
	const { createGunzip } = process.getBuiltinModule('node:zlib');
	const { Readable } = process.getBuiltinModule('node:stream');
	// The unpacker takes pieces ahead.
	const copies = async function* () {
		for await (const piece of whole()) yield new Uint8Array(piece);
	};
	const source = Readable.from(copies(), { objectMode: false });
	const gunzip = createGunzip({ chunkSize: 256 * 1024 });
	source.on('error', error => gunzip.destroy(error));
	let given = 0;
	try {
		for await (const piece of source.pipe(gunzip)) {
			given += piece.length;
			if (given > unpackedFreely && given > taken() * mostTimes) {
				throw new FileProblem(
					name,
					`this unpacks to more than ${mostTimes} times its size`,
					'No log does; name another file.',
				);
			}
			yield piece;
		}
	} catch (error) {
		const code = (error as NodeJS.ErrnoException).code ?? '';
		if (!/^Z_/.test(code)) throw error;
		throw new FileProblem(
			name,
			'this is a gzip file that is damaged or cut',
			'Unpack it by hand, or export the log anew.',
		);
	} finally {
		gunzip.destroy();
		source.destroy();
	}
}
