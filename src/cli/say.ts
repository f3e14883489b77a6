import { writeSync } from 'node:fs';
import { asProblem } from '../files/problem.ts';
import { sanitize } from '../text/sanitize.ts';

/** A line of talk, to stderr: stdout holds data only. Control characters never reach the terminal. */
export function say(line: string): void {
	const harmless = line.split('\n').map(sanitize).join('\n');
	try {
		writeWhole(2, Buffer.from(`${harmless}\n`));
	} catch {
		// Nobody listens: then nothing is lost.
	}
}

/**
 * Data, to stdout, whole: waits for a slow pipe. A closed one ends the command quietly, with the status it has come to.
 *
 * @throws FileProblem when the system refuses, as on a disk that is full
 */
export function print(text: string): void {
	toStdout(Buffer.from(text.endsWith('\n') ? text : `${text}\n`));
}

/** Where lines are put together; it grows to the longest. */
let room = Buffer.allocUnsafe(0);

/** The same for one line that comes in pieces and is one of many: nothing is left behind of it. */
export function printLine(pieces: readonly string[]): void {
	let end = 1;
	// No sign of a string takes more than three bytes.
	for (const { length } of pieces) end += 3 * length;
	if (room.length < end) room = Buffer.allocUnsafe(end);
	let at = 0;
	for (const piece of pieces) at += room.write(piece, at);
	at += room.write('\n', at);
	toStdout(room.subarray(0, at));
}

function toStdout(bytes: Uint8Array): void {
	try {
		writeWhole(1, bytes);
	} catch (error) {
		if ((error as NodeJS.ErrnoException).code === 'EPIPE') process.exit();
		throw asProblem('standard output', error);
	}
}

function writeWhole(stream: 1 | 2, bytes: Uint8Array): void {
	for (let at = 0; at < bytes.length; ) {
		try {
			at += writeSync(stream, bytes, at);
		} catch (error) {
			if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') throw error;
			Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 2);
		}
	}
}
