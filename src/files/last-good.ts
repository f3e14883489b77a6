import { resolveTarget, type Target, withTemp } from './atomic-write.ts';
import { type FileSystem, fileSystem } from './file-system.ts';
import { siblingWith } from './names.ts';
import { asProblem, shown } from './problem.ts';
import { readWhole } from './read.ts';

/**
 * Keeps a copy of what was just saved, for the day an edit by hand goes wrong.
 *
 * It is not flushed: after a power cut the sheet itself is whole. Nor may it fail a save that is done.
 */
export function keepLastGood(to: Target, bytes: Uint8Array, on: FileSystem): void {
	try {
		const copy = siblingWith(to.path, 'last-good');
		withTemp({ path: copy, entry: to.entry }, bytes, on, 'no flush', temp => on.rename(temp, copy));
	} catch {}
}

/** What to say when a sheet turns out broken: where its last good copy is; null when there is none, or it is the same. */
export function lastGoodAdvice(path: string, on: FileSystem = fileSystem): string | null {
	try {
		const real = resolveTarget(path, on).path;
		const copy = siblingWith(real, 'last-good');
		const entry = on.look(copy, 'the link itself');
		if (entry === null || same(copy, real, on)) return null;
		const when = `${new Date(entry.changed).toISOString().slice(0, 16).replace('T', ' ')} UTC`;
		return `As it was last saved, ${when}, it is in ${shown(copy)}: copy that over the sheet to go back to it.`;
	} catch (error) {
		asProblem(path, error);
		return null;
	}
}

function same(copy: string, sheet: string, on: FileSystem): boolean {
	const good = readWhole(copy, undefined, on).mark;
	try {
		return readWhole(sheet, undefined, on).mark === good;
	} catch {
		return false;
	}
}
