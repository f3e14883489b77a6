import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Script } from 'node:vm';
import { cacheFolder } from './paths.ts';

/**
 * Where compiled code of a program is cached: for this engine, machine and build of it.
 *
 * @param start by what it is started: each start uses other parts of the program and has a file of its own
 * @returns null when the user switched compile caches off
 */
export function codeCacheFile(program: string, start: string): string | null {
	if (process.env.NODE_DISABLE_COMPILE_CACHE) return null;
	const { size, mtimeMs } = statSync(program);
	const build = `${size.toString(36)}-${Math.floor(mtimeMs).toString(36)}`;
	return join(cacheFolder(process.env), 'code', `${process.versions.v8}-${process.arch}-${build}-${start}`);
}

/**
 * Undefined where there is none, or it is damaged: then everything is compiled anew. The engine itself would run damaged code, so
 * it stands in the file twice: to compare two copies takes a tenth of the time that it takes to load a library with a checksum.
 */
export function readCode(file: string): Buffer | undefined {
	try {
		const whole = readFileSync(file);
		const code = whole.subarray(0, whole.length / 2);
		return code.length > 0 && code.equals(whole.subarray(code.length)) ? code : undefined;
	} catch {
		return undefined;
	}
}

/** Writes what the engine has compiled so far, whole or not at all. A cache that cannot be written costs time, nothing else. */
export function writeCode(file: string, script: Script): void {
	// Threads of one process may write at once.
	const temp = `${file}.${process.pid}-${process.hrtime.bigint()}`;
	try {
		const code = script.createCachedData();
		const folder = dirname(file);
		mkdirSync(folder, { recursive: true });
		writeFileSync(temp, Buffer.concat([code, code]), { mode: 0o600, flag: 'wx' });
		renameSync(temp, file);
		// What an older build or engine left there serves nobody.
		const current = file.slice(0, file.lastIndexOf('-'));
		for (const name of readdirSync(folder)) {
			if (!join(folder, name).startsWith(current)) rmSync(join(folder, name), { force: true });
		}
	} catch {
		try {
			rmSync(temp, { force: true });
		} catch {
			// No folder to make one in: nothing was left.
		}
	}
}
