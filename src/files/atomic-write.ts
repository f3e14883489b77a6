import { isAbsolute } from 'node:path';
import type { Entry, FileSystem } from './file-system.ts';
import { sibling, tempPath } from './names.ts';
import { FileProblem } from './problem.ts';

/** Where a write lands, and what is there now. */
export interface Target {
	path: string;
	entry: Entry | null;
}

/**
 * Follows one symbolic link, so that a sheet linked from a git checkout stays linked.
 *
 * @throws FileProblem for a folder, a device, a link to a link
 */
export function resolveTarget(path: string, on: FileSystem): Target {
	const entry = on.look(path, 'the link itself');
	if (entry?.kind !== 'link') return plain(path, entry);
	const link = on.readLink(path);
	// Put together as text: the system, not we, takes `..` out of it, because the folder may be a link too.
	const real = isAbsolute(link) ? link : sibling(path, link);
	return plain(real, on.look(real, 'the link itself'));
}

function plain(path: string, entry: Entry | null): Target {
	if (entry === null || entry.kind === 'file') return { path, entry };
	const [found, todo] = {
		folder: ['this is a folder', 'Name a file.'],
		link: ['this is a link that a link points to', 'Name the file itself.'],
		other: ['this is a device or a pipe', 'Name a file.'],
	}[entry.kind] as [string, string];
	throw new FileProblem(path, found, todo);
}

/**
 * Writes the bytes to a new file in the folder of the target, with the mode and the owner of what is there now,
 * and hands its path to the work, which moves it to its place. On an error of either the new file is gone again.
 */
export function withTemp<T>(
	to: Target,
	bytes: Uint8Array,
	on: FileSystem,
	flush: 'flush' | 'no flush',
	work: (temp: string) => T,
): T {
	const temp = tempPath(to.path, on);
	const file = on.open(temp, 'wx', to.entry ? to.entry.mode & 0o777 : 0o666);
	try {
		try {
			writeAll(file, bytes, on);
			if (to.entry !== null) keepRights(file, to.entry, on);
			if (flush === 'flush') on.flush(file);
		} finally {
			on.close(file);
		}
		return work(temp);
	} catch (error) {
		discard(temp, on);
		throw error;
	}
}

/** Writes on until every byte is written: the system may take fewer at a time, as on a disk that fills up. */
export function writeAll(file: number, bytes: Uint8Array, on: FileSystem): void {
	for (let done = 0; done < bytes.length; ) {
		const count = on.write(file, bytes.subarray(done));
		if (count === 0) throw Object.assign(new Error('no room'), { code: 'ENOSPC' });
		done += count;
	}
}

/** As far as the disk knows owners and modes, and the person may set them. */
function keepRights(file: number, { mode, uid, gid }: Entry, on: FileSystem): void {
	for (const set of [() => on.chown(file, uid, gid), () => on.chmod(file, mode & 0o777)]) {
		try {
			set();
		} catch (error) {
			if (!['EPERM', 'EINVAL', 'ENOTSUP', 'ENOSYS'].includes((error as NodeJS.ErrnoException).code ?? '')) throw error;
		}
	}
}

/** Removes a half-written file if that can be done; what stays is swept up at a later start. */
export function discard(temp: string, on: FileSystem): void {
	try {
		on.unlink(temp);
	} catch {}
}
