/** Something in a sheet that cannot be taken: where, what was found, what is. */
export interface SheetProblem {
	readonly path: string;
	readonly found: string;
	readonly accepted: string;
}

/** One line for a person. */
export function writeSheetProblem({ path, found, accepted }: SheetProblem): string {
	return `${path}: found ${found}; accepted: ${accepted}`;
}

/** A sheet that cannot be used, with everything that is wrong in it. */
export class BadSheet extends Error {
	override readonly name = 'BadSheet';
	readonly problems: readonly SheetProblem[];
	constructor(problems: readonly SheetProblem[]) {
		super(problems.map(writeSheetProblem).join('\n'));
		this.problems = problems;
	}
}

/** Anything found in a file, short and on one line, with control characters shown and not sent. */
export function shown(found: unknown): string {
	const text = found === undefined ? 'nothing' : (JSON.stringify(found) ?? String(found));
	const short = text.length > 80 ? `${text.slice(0, 77)}...` : text;
	return short.replace(
		/[\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]/g,
		mark => `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`,
	);
}
