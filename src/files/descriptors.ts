import { fstatSync, writeSync } from 'node:fs';

/** Writes bytes to standard output (1) or standard error (2), whole: waits for a slow pipe. */
export function writeWhole(stream: 1 | 2, bytes: Uint8Array): void {
	for (let at = 0; at < bytes.length; ) {
		try {
			at += writeSync(stream, bytes, at);
		} catch (error) {
			if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') throw error;
			Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 2);
		}
	}
}

/** Whether standard input is a folder, of which a stream would say nothing but that it ended. */
export const inputIsFolder = (): boolean => fstatSync(0).isDirectory();
