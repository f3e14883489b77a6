import { join } from 'node:path';
import { discard } from './atomic-write.ts';
import { type FileSystem, fileSystem } from './file-system.ts';
import { tempOwner } from './names.ts';

/** No save takes a day; in ms. */
const day = 86_400_000;

/**
 * Removes the half-written files of processes that died, to be called at a start; touches nothing else.
 * Those of another computer, on a shared disk, go when they are a day old. What cannot be swept is left for another time.
 */
export function sweep(folder: string, on: FileSystem = fileSystem): void {
	try {
		for (const name of on.list(folder)) {
			const owner = tempOwner(name, on);
			if (owner === null) continue;
			const path = join(folder, name);
			const entry = on.look(path, 'the link itself');
			if (entry?.kind !== 'file') continue;
			if ((owner.here && !on.alive(owner.pid)) || on.now() - entry.changed > day) discard(path, on);
		}
	} catch {}
}
