import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Script } from 'node:vm';
import { crc32 } from 'node:zlib';

/** What the program takes from the file that starts it: a script has neither of its own. */
type Begin = (require: NodeJS.Require, folder: string, importing: (name: string) => Promise<unknown>) => void;

/**
 * The whole program as a script. `kept` spares compiling what it holds; the engine leaves it aside where it does not fit
 * the script or the engine's flags.
 */
export function programIn(folder: string, kept?: Buffer): { readonly script: Script; readonly begin: Begin } {
	const filename = join(folder, 'program.js');
	// Nothing in it is beyond ASCII: the build sees to that.
	const script = new Script(readFileSync(filename, 'latin1'), { filename, ...(kept && { cachedData: kept }) });
	return { script, begin: script.runInThisContext() };
}

/**
 * The file in which the build keeps what was compiled, for this engine and machine. The ways to start the command use
 * different parts of the program, so each has its own.
 */
export function keptFile(folder: string, [first = 'interview']: readonly string[]): string {
	const start = first.startsWith('-') ? 'help' : first === 'interview' ? 'interview' : 'audit';
	return join(folder, 'kept', `${process.versions.v8}-${process.arch}-${start}`);
}

/** Bytes of the check at the end of what is kept: the engine itself would run a damaged one. */
const checkSize = 4;

export function writeKept(file: string, code: Buffer): void {
	const check = Buffer.alloc(checkSize);
	check.writeUInt32LE(crc32(code));
	writeFileSync(file, Buffer.concat([code, check]));
}

/** Undefined where none was kept, or it is damaged: then everything is compiled anew. */
export function readKept(file: string): Buffer | undefined {
	try {
		const whole = readFileSync(file);
		const code = whole.subarray(0, -checkSize);
		return crc32(code) === whole.readUInt32LE(code.length) ? code : undefined;
	} catch {
		return undefined;
	}
}
