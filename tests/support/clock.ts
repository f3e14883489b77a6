import { type FileSystem, fileSystem } from '../../src/files/file-system.ts';

/** A machine on which waiting takes no time: its clock is moved on instead. `waited` shows by how many ms. */
export function quickClock(): { on: FileSystem; waited: () => number } {
	let ms = 0;
	const on: FileSystem = {
		...fileSystem,
		now: () => Date.now() + ms,
		pause(longer) {
			ms += longer;
		},
	};
	return { on, waited: () => ms };
}
