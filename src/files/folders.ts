import { basename, dirname, join } from 'node:path';
import { type FileSystem, fileSystem } from './file-system.ts';
import { asFileProblems, asProblem, type FileProblem } from './problem.ts';
import { readWhole } from './read.ts';

/** A sheet of a folder, as the opening screen shows it. One that cannot be read has no text but a problem. */
export interface Listed {
	/** The file's name without `.json`. */
	name: string;
	path: string;
	changed: Date;
	text: string | null;
	problem: FileProblem | null;
}

/** Sheets shown at most, and the largest read for it in bytes: the screen must open at once. */
const mostShown = 100;
const largestShown = 1024 * 1024;

/** The sheets of a folder, the last changed first, at most 100. No folder, no sheets. */
export function listSheets(folder: string, on: FileSystem = fileSystem): Listed[] {
	return asFileProblems(folder, () => {
		if (on.look(folder, 'follow') === null) return [];
		return on
			.list(folder)
			.filter(file => file.endsWith('.json') && !file.startsWith('.'))
			.flatMap(file => dated(join(folder, file), on))
			.sort((a, b) => b.changed - a.changed || (a.path < b.path ? -1 : 1))
			.slice(0, mostShown)
			.map(({ path, changed }) => ({
				name: basename(path, '.json'),
				path,
				changed: new Date(changed),
				...textOf(path, on),
			}));
	});
}

/** Nothing for a folder, and for a link that leads nowhere: it must not keep the others off the screen. */
function dated(path: string, on: FileSystem): { path: string; changed: number }[] {
	try {
		const entry = on.look(path, 'follow');
		return entry?.kind === 'file' ? [{ path, changed: entry.changed }] : [];
	} catch (error) {
		asProblem(path, error);
		return [];
	}
}

function textOf(path: string, on: FileSystem): Pick<Listed, 'text' | 'problem'> {
	try {
		return { text: readWhole(path, largestShown, on).text, problem: null };
	} catch (error) {
		return { text: null, problem: asProblem(path, error) };
	}
}

/** Makes a folder and those above it that are missing, for the person alone; each outlasts a power cut. */
export function makeFolder(folder: string, on: FileSystem = fileSystem): void {
	asFileProblems(folder, () => {
		if (on.look(folder, 'follow') !== null) return;
		const above = dirname(folder);
		makeFolder(above, on);
		try {
			on.makeFolder(folder, 0o700);
		} catch (error) {
			// Another program was quicker.
			if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
		}
		on.flushFolder(above);
	});
}
