import * as fs from 'node:fs';
import { hostname } from 'node:os';

/** What stands under a path. */
export interface Entry {
	kind: 'file' | 'folder' | 'link' | 'other';
	/** Permission bits, without the kind. */
	mode: number;
	uid: number;
	gid: number;
	/** Last change of the content, in ms since 1970. */
	changed: number;
}

/**
 * What this room asks of the machine, and all it asks.
 *
 * It is handed in, so that tests can fill the disk, cut the power or fail one operation.
 * Every call is synchronous: a sheet is also saved while a signal ends the program. Every call throws
 * the system's error with its code (`ENOSPC`).
 */
export interface FileSystem {
	open(path: string, flags: 'r' | 'r+' | 'wx', mode?: number): number;
	/** Reads on from where the last read ended; 0 is the end. */
	read(file: number, into: Uint8Array): number;
	/** May write less than it was given, as the system may; gives the count. */
	write(file: number, bytes: Uint8Array): number;
	chmod(file: number, mode: number): void;
	chown(file: number, uid: number, gid: number): void;
	/** Returns when the content is on the disk, not in a buffer. */
	flush(file: number): void;
	close(file: number): void;
	/** Returns when the names in a folder are on the disk. */
	flushFolder(path: string): void;
	rename(from: string, to: string): void;
	unlink(path: string): void;
	makeFolder(path: string, mode: number): void;
	/** null when nothing is there. */
	look(path: string, follow: 'follow' | 'the link itself'): Entry | null;
	readLink(path: string): string;
	/** The path without links. */
	realPath(path: string): string;
	list(folder: string): string[];

	readonly pid: number;
	readonly host: string;
	/** ms since 1970. */
	now(): number;
	/** Whether a process of this machine runs. */
	alive(pid: number): boolean;
	pause(ms: number): void;
}

/** The real one. */
export const fileSystem: FileSystem = {
	open: fs.openSync,
	read: (file, into) => fs.readSync(file, into),
	write: (file, bytes) => fs.writeSync(file, bytes),
	chmod: fs.fchmodSync,
	chown: fs.fchownSync,
	flush: fs.fsyncSync,
	close: fs.closeSync,
	flushFolder(path) {
		// Windows cannot open a folder, and keeps names safe by itself.
		if (process.platform === 'win32') return;
		const folder = fs.openSync(path, 'r');
		try {
			fs.fsyncSync(folder);
		} catch (error) {
			// Some network and phone file systems have no such operation.
			if (!['EINVAL', 'ENOTSUP', 'ENOSYS'].includes((error as NodeJS.ErrnoException).code ?? '')) throw error;
		} finally {
			fs.closeSync(folder);
		}
	},
	rename: fs.renameSync,
	unlink: fs.unlinkSync,
	makeFolder: (path, mode) => fs.mkdirSync(path, { mode }),
	look(path, follow) {
		const stat = (follow === 'follow' ? fs.statSync : fs.lstatSync)(path, { throwIfNoEntry: false });
		if (stat === undefined) return null;
		const kind = stat.isFile() ? 'file' : stat.isDirectory() ? 'folder' : stat.isSymbolicLink() ? 'link' : 'other';
		return { kind, mode: stat.mode & 0o7777, uid: stat.uid, gid: stat.gid, changed: stat.mtimeMs };
	},
	readLink: path => fs.readlinkSync(path),
	realPath: path => fs.realpathSync(path),
	list: folder => fs.readdirSync(folder),

	pid: process.pid,
	host: hostname(),
	now: Date.now,
	alive(pid) {
		try {
			process.kill(pid, 0);
			return true;
		} catch (error) {
			// Somebody else's process may not be signalled, but it runs.
			return (error as NodeJS.ErrnoException).code === 'EPERM';
		}
	},
	pause: ms => void Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms),
};
