/** Something in a sheet that cannot be taken: where, what was found, what is. */
export interface SheetProblem {
	readonly path: string;
	readonly found: string;
	readonly accepted: string;
}

/** One line for a person. A path holds keys of the file, which may be anything. */
export function writeSheetProblem({ path, found, accepted }: SheetProblem): string {
	return `${onOneLine(path)}: found ${found}; accepted: ${accepted}`;
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

/** More than the longest sheet of a hand has; a file that is something else altogether may have a million. */
const mostProblems = 500;

/** Notes a problem. Throws them all once they are more than anybody reads. */
export function noteProblem(problems: SheetProblem[], problem: SheetProblem): void {
	problems.push(problem);
	if (problems.length < mostProblems) return;
	const accepted = 'fix these first, or look whether this is the right file';
	throw new BadSheet([...problems, { path: 'sheet', found: `${mostProblems} faults, and more behind them`, accepted }]);
}

/** Anything found in a file, short and on one line, with control characters shown and not sent. */
export function shown(found: unknown): string {
	if (found === undefined) return 'nothing';
	// JSON has no infinity, but a number like 1e999 reads as one.
	const plain = typeof found === 'number' && !Number.isFinite(found);
	return onOneLine(plain ? 'a number too large to read' : JSON.stringify(found));
}

/** At most 80 characters; those that steer a terminal or turn the direction of writing as `\u009b`. */
function onOneLine(text: string): string {
	const short = text.length > 80 ? `${text.slice(0, 77)}...` : text;
	return short.replace(/\p{C}/gu, mark => `\\u${mark.codePointAt(0)!.toString(16).padStart(4, '0')}`);
}
