import { join } from 'node:path';
import { type FileSystem, fileSystem } from './file-system.ts';
import { asFileProblems, FileProblem } from './problem.ts';
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
export function readTexts(
	path: string,
	endings: string[],
	on: FileSystem = fileSystem,
): { path: string; text: string }[] {
	const files = isFolder(path, on) ? filesUnder(path, endings, on, deepest) : [path];
	if (files.length > mostFiles)
		throw new FileProblem(path, `more than ${mostFiles} files`, 'Name the folder of the pack.');
	return files.map(file => ({ path: file, text: readWhole(file, undefined, on).text }));
}

function filesUnder(folder: string, endings: string[], on: FileSystem, depth: number): string[] {
	if (depth === 0) throw new FileProblem(folder, `folders more than ${deepest} deep`, 'Name the folder of the pack.');
	return asFileProblems(folder, () =>
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

function isFolder(path: string, on: FileSystem): boolean {
	return asFileProblems(path, () => on.look(path, 'follow')?.kind === 'folder');
}
