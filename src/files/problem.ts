/** A file that cannot be read or written: where, what was found, what to do. The message says all three. */
export class FileProblem extends Error {
	override readonly name = 'FileProblem';
	readonly path: string;
	readonly found: string;
	readonly todo: string;
	/** The system's code (`ENOSPC`), null when the content was refused. */
	readonly code: string | null;

	constructor(path: string, found: string, todo: string, code: string | null = null) {
		super(`${shown(path)}: ${found}. ${todo}`);
		this.path = path;
		this.found = found;
		this.todo = todo;
		this.code = code;
	}
}

/** A path as it may be printed: control characters and those that turn the writing direction are spelled out. */
export function shown(path: string): string {
	return path.replace(/[\p{Cc}\p{Cf}\u2028\u2029]/gu, sign => `\\u{${sign.codePointAt(0)?.toString(16)}}`);
}

const room = 'Free some space, then try again.';
const rights = 'Look who owns the file and its folder, and what they allow.';

const words: Record<string, [found: string, todo: string]> = {
	ENOENT: ['there is no such file or folder', 'Check the spelling, and that the folder exists.'],
	ENOTDIR: ['a part of this path is a file, not a folder', 'Check the spelling.'],
	EISDIR: ['this is a folder', 'Name a file.'],
	EACCES: ['the system does not allow it', rights],
	EPERM: ['the system does not allow it', rights],
	EROFS: ['the disk is read-only', 'Choose a place that can be written.'],
	ENOSPC: ['the disk is full', room],
	EDQUOT: ['your share of the disk is used up', room],
	EIO: ['the disk reports an error', 'Copy your sheets to another disk before anything else.'],
	ENAMETOOLONG: ['the name is too long', 'Choose a shorter one.'],
	ELOOP: ['its links go round in a circle', 'Name the file itself.'],
};

/** In what state a file is when its name could not be flushed. */
export const unconfirmed = 'The new text is in place, but the disk did not confirm that it will outlast a power cut.';

/**
 * The system's error as a FileProblem; one that is a FileProblem already comes back as it is.
 * `state` says in what state the file is now. Anything else is a bug and is thrown on.
 */
export function asProblem(path: string, error: unknown, state = ''): FileProblem {
	if (error instanceof FileProblem) return error;
	const code = error instanceof Error && 'code' in error ? String(error.code) : '';
	if (!/^E[A-Z0-9]+$/.test(code)) throw error;
	const [found, todo] = words[code] ?? [`the system reports ${code}`, 'Try again, or choose another place.'];
	return new FileProblem(path, found, `${todo} ${state}`.trim(), code);
}

/** Does the work; the system's errors come out as a FileProblem. */
export function asFileProblems<T>(path: string, work: () => T, state?: string): T {
	try {
		return work();
	} catch (error) {
		throw asProblem(path, error, state);
	}
}
