import { basename, dirname, join } from 'node:path';
import { resolveTarget, withTemp } from './atomic-write.ts';
import { type FileSystem, fileSystem } from './file-system.ts';
import { deviceName } from './names.ts';
import { asFileProblems, FileProblem, unconfirmed } from './problem.ts';

type Content = string | Uint8Array;

/**
 * Writes an audit, and the pictures it shows beside it. Each file is written whole or not at all; the pictures go first,
 * so that an audit never shows an old one. A file that is there is replaced, a symbolic link is followed once.
 *
 * @param pictures by name: plain names only (`safeName`), never a path, and never over a link
 * @throws FileProblem for a folder, a device, a name that is not plain, and when the system refuses
 */
export function writeOutput(
	path: string,
	text: Content,
	pictures: Record<string, Content> = {},
	on: FileSystem = fileSystem,
): void {
	asFileProblems(path, () => resolveTarget(path, on));
	const files = Object.entries(pictures).map(([name, content]) => ({
		name,
		content,
		picture: join(dirname(path), name),
	}));
	for (const { name, picture } of files) {
		if (name !== safeName(name) || name === basename(path)) {
			throw new FileProblem(name, 'this cannot be the name of a picture', 'Use letters, digits and hyphens.');
		}
		if (asFileProblems(picture, () => on.look(picture, 'the link itself'))?.kind === 'link') {
			throw new FileProblem(picture, 'a link is in the place of a picture', 'Remove it, or choose another folder.');
		}
	}
	for (const { picture, content } of files) put(picture, content, on);
	put(path, text, on);
}

function put(path: string, content: Content, on: FileSystem): void {
	const to = asFileProblems(path, () => resolveTarget(path, on));
	const bytes = typeof content === 'string' ? Buffer.from(content) : content;
	asFileProblems(
		path,
		() => withTemp(to, bytes, on, 'flush', temp => on.rename(temp, to.path)),
		'The file is as it was.',
	);
	asFileProblems(path, () => on.flushFolder(dirname(to.path)), unconfirmed);
}

/** A file's name made of any text: letters, digits, dots, hyphens, underscores; at most 80; `audit` when nothing is left. */
export function safeName(text: string): string {
	const name = text
		.normalize('NFKD')
		.replace(/\p{M}/gu, '')
		.replace(/[^A-Za-z0-9._-]+/g, '-')
		.replace(/^[-.]+/, '')
		.slice(0, 80)
		.replace(/[-.]+$/, '');
	return name === '' ? 'audit' : deviceName.test(name) ? `_${name}` : name;
}
