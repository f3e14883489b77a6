import { discard, writeAll } from './atomic-write.ts';
import { crypto } from './crypto.ts';
import type { FileSystem } from './file-system.ts';
import { siblingWith } from './names.ts';
import { FileProblem, shown } from './problem.ts';
import { readBytes } from './read.ts';

/** A save takes milliseconds. A lock of a running process that is older than this (ms) was left by another with its number. */
const longest = 60_000;
/** A lock is empty only between its making and its first write; in ms. Less than a save waits. */
const longestEmpty = 1_000;
/** How often the work is begun before a lock that was taken away each time ends it. */
const mostTries = 5;
/** How long a save waits for its turn: this many pauses of 5 ms, 2 s in all. */
const pauses = 400;

interface Holder {
	token: string;
	pid: number;
	host: string;
	/** ms since 1970 */
	since: number;
}

/**
 * Does the work while no other program of this kind works on the same file.
 *
 * The lock is a small hidden file beside it that names its holder. The lock of a process that died is taken over at once.
 * The work gets a function to call right before its decisive step: it throws when the lock was taken away meanwhile,
 * as may happen on a computer that slept, or was too busy, in between. Nothing has changed then, and the work is begun anew.
 *
 * @throws FileProblem when another program holds on to it for 2 seconds, naming the program and the lock
 */
export function withLock<T>(path: string, on: FileSystem, work: (stillMine: () => void) => T): T {
	const lock = siblingWith(path, 'lock');
	for (let tries = 1; ; tries++) {
		const token = take(lock, path, on);
		try {
			return work(() => {
				if (holderOf(lock, on)?.token !== token) throw new LockLost(path);
			});
		} catch (error) {
			if (!(error instanceof LockLost) || tries === mostTries) throw error;
		} finally {
			release(lock, token, on);
		}
	}
}

class LockLost extends FileProblem {
	constructor(path: string) {
		super(path, 'another program took over in the middle of the save', 'Save again.');
	}
}

function take(lock: string, path: string, on: FileSystem): string {
	const token = crypto().randomUUID();
	for (let tries = 0; ; tries++) {
		if (create(lock, { token, pid: on.pid, host: on.host, since: on.now() }, on)) return token;
		const holder = holderOf(lock, on);
		if (holder === null) continue;
		if (abandoned(holder, on)) {
			remove(lock, path, on);
		} else if (tries >= pauses) {
			const who = holder.pid === 0 ? 'another program' : `process ${holder.pid} on ${shown(holder.host)}`;
			const since = new Date(holder.since).toISOString();
			const todo = `Try again. If no such program runs any more, delete ${shown(lock)} first.`;
			throw new FileProblem(path, `${who} has been saving it since ${since}`, todo);
		} else {
			on.pause(5);
		}
	}
}

/** The lock of a dead process goes under a lock of its own: else two who find it dead could remove each other's new one. */
function remove(lock: string, path: string, on: FileSystem): void {
	const inner = `${lock}~`;
	const token = take(inner, path, on);
	try {
		const holder = holderOf(lock, on);
		if (holder !== null && abandoned(holder, on)) on.unlink(lock);
	} finally {
		release(inner, token, on);
	}
}

function create(lock: string, holder: Holder, on: FileSystem): boolean {
	let file: number;
	try {
		file = on.open(lock, 'wx', 0o666);
	} catch (error) {
		if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
		throw error;
	}
	try {
		writeAll(file, Buffer.from(JSON.stringify(holder)), on);
	} catch (error) {
		discard(lock, on);
		throw error;
	} finally {
		on.close(file);
	}
	return true;
}

/** null when there is no lock any more; process 0 when the lock does not say whose it is. */
function holderOf(lock: string, on: FileSystem): Holder | null {
	try {
		const entry = on.look(lock, 'the link itself');
		if (entry === null) return null;
		const file = on.open(lock, 'r');
		try {
			const text = readBytes(file, 1000, on).toString('utf8');
			return parsed(text) ?? { token: '', pid: 0, host: on.host, since: entry.changed };
		} finally {
			on.close(file);
		}
	} catch (error) {
		if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
		throw error;
	}
}

function parsed(text: string): Holder | null {
	try {
		const { token, pid, host, since } = JSON.parse(text);
		if (typeof token !== 'string' || !Number.isInteger(pid) || typeof host !== 'string') return null;
		return Number.isFinite(new Date(since).getTime()) ? { token, pid, host, since } : null;
	} catch {
		return null;
	}
}

function abandoned({ pid, host, since }: Holder, on: FileSystem): boolean {
	const age = on.now() - since;
	if (pid === 0) return age > longestEmpty;
	// Saves do not overlap inside one process, so its own number on a lock is that of an earlier process.
	if (host === on.host && (pid === on.pid || !on.alive(pid))) return true;
	return age > longest;
}

/** A lock that cannot be removed does no harm: it is dead with this process. */
function release(lock: string, token: string, on: FileSystem): void {
	try {
		if (holderOf(lock, on)?.token === token) on.unlink(lock);
	} catch {}
}
