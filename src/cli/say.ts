import { writeSync } from 'node:fs';
import { clean } from '../report/clean.ts';

/** A line of talk, to stderr: stdout holds data only. Control characters never reach the terminal. */
export function say(line: string): void {
	const harmless = line.split('\n').map(clean).join('\n');
	try {
		writeSync(2, `${harmless}\n`);
	} catch {
		// Nobody listens: then nothing is lost.
	}
}

/** Data, to stdout, whole: waits for a slow pipe; a closed one ends quietly. */
export function print(text: string): void {
	const bytes = Buffer.from(text.endsWith('\n') ? text : `${text}\n`);
	for (let at = 0; at < bytes.length; ) {
		try {
			at += writeSync(1, bytes, at);
		} catch (error) {
			const { code } = error as NodeJS.ErrnoException;
			if (code === 'EPIPE') process.exit(0);
			if (code !== 'EAGAIN') throw error;
			Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 2);
		}
	}
}
