import { writeWhole } from '../../files/descriptors.ts';
import { asProblem } from '../../files/problem.ts';
import { sanitize } from '../../text/sanitize.ts';

/** A line of talk, to stderr: stdout holds data only. Control characters never reach the terminal. */
export function printMessage(line: string): void {
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
	printBytes(Buffer.from(text.endsWith('\n') ? text : `${text}\n`));
}

/** The same of bytes. */
export function printBytes(bytes: Uint8Array): void {
	try {
		writeWhole(1, bytes);
	} catch (error) {
		if ((error as NodeJS.ErrnoException).code === 'EPIPE') process.exit();
		throw asProblem('standard output', error);
	}
}
