import { join } from 'node:path';
import { type FileSystem, fileSystem } from './file-system.ts';
import { asFileProblems, FileProblem } from './problem.ts';
import { readWhole } from './read.ts';

/** Folders inside folders, and files in all, that a rule pack may have: enough for any. */
const deepest = 8;
const mostFiles = 500;
/** Characters of all files of a pack together: what is full of faults takes a second or so for 200,000. */
export const mostOfPack = 1_000_000;

/**
 * The texts of a rule pack: of one file, or of every file under a folder with one of the endings, sorted by path.
 * Hidden files are left out; a folder that links lead to more than once is read once.
 *
 * @throws FileProblem as `readWhole` does, and for folders 9 deep, 501 files, or more text than `most`, which end the walk
 */
export function readTexts(
	path: string,
	endings: string[],
	most = Number.POSITIVE_INFINITY,
	on: FileSystem = fileSystem,
): { path: string; text: string }[] {
	const texts: { path: string; text: string }[] = [];
	let size = 0;
	for (const file of filesOf(path, endings, on)) {
		if (texts.length >= mostFiles) throw tooMuch(path, `${mostFiles} files`);
		const { text } = readWhole(file, undefined, on);
		size += text.length;
		if (size > most) throw tooMuch(path, `${most} characters`);
		texts.push({ path: file, text });
	}
	return texts;
}

const tooMuch = (path: string, most: string) =>
	new FileProblem(path, `more than ${most}`, 'Name the folder of the pack.');

function* filesOf(path: string, endings: string[], on: FileSystem): Generator<string> {
	if (isFolder(path, on)) yield* filesUnder(path, endings, on, deepest, new Set());
	else yield path;
}

function* filesUnder(
	folder: string,
	endings: string[],
	on: FileSystem,
	depth: number,
	seen: Set<string>,
): Generator<string> {
	const real = asFileProblems(folder, () => on.realPath(folder));
	if (seen.has(real)) return;
	seen.add(real);
	if (depth === 0) throw new FileProblem(folder, `folders more than ${deepest} deep`, 'Name the folder of the pack.');
	for (const name of asFileProblems(folder, () => on.list(folder)).sort()) {
		const path = join(folder, name);
		if (name.startsWith('.')) continue;
		if (isFolder(path, on)) yield* filesUnder(path, endings, on, depth - 1, seen);
		else if (endings.some(ending => name.endsWith(ending))) yield path;
	}
}

function isFolder(path: string, on: FileSystem): boolean {
	return asFileProblems(path, () => on.look(path, 'follow')?.kind === 'folder');
}
