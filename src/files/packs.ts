import { join } from 'node:path';
import { type Machine, machine } from './machine.ts';
import { FileProblem, reported } from './problem.ts';
import { readWhole } from './read.ts';

/** Folders inside folders, and files in all, that a rule pack may have: enough for any, and an end for links that go round. */
const deepest = 8;
const mostFiles = 2000;

/**
 * The texts of a rule pack: of one file, or of every file under a folder with one of the endings, sorted by path.
 * Hidden files are left out.
 *
 * @throws FileProblem as `readWhole` does, and for folders 9 deep or 2001 files
 */
export function textsUnder(path: string, endings: string[], on: Machine = machine): { path: string; text: string }[] {
	const files = isFolder(path, on) ? filesUnder(path, endings, on, deepest) : [path];
	if (files.length > mostFiles)
		throw new FileProblem(path, `more than ${mostFiles} files`, 'Name the folder of the pack.');
	return files.map(file => ({ path: file, text: readWhole(file, undefined, on).text }));
}

function filesUnder(folder: string, endings: string[], on: Machine, depth: number): string[] {
	if (depth === 0) throw new FileProblem(folder, `folders more than ${deepest} deep`, 'Name the folder of the pack.');
	return reported(folder, () =>
		on
			.list(folder)
			.filter(name => !name.startsWith('.'))
			.sort()
			.flatMap(name => {
				const path = join(folder, name);
				if (isFolder(path, on)) return filesUnder(path, endings, on, depth - 1);
				return endings.some(ending => name.endsWith(ending)) ? [path] : [];
			}),
	);
}

function isFolder(path: string, on: Machine): boolean {
	return reported(path, () => on.look(path, 'follow')?.kind === 'folder');
}
