import type { YAMLMap } from 'yaml';
import { type ReadYaml, readYaml } from './yaml.ts';

/** A file of rules/ as text, with its path inside the folder. */
export interface SourceText {
	readonly path: string;
	readonly text: string;
}

/** Something wrong in a rule file: where, what, and how to fix it. */
export interface Problem {
	readonly path: string;
	readonly line: number;
	readonly column: number;
	readonly message: string;
	readonly frame: string;
}

/** More problems of one file are not reported: whoever fixes these will see the rest. */
const most = 100;
/** Columns of the line that a frame shows. */
const shown = 120;

/** One parsed file and the problems found in it so far. */
export class Source {
	readonly path: string;
	readonly problems: Problem[];
	/** Null when the file is no mapping that can be read; then its problems say why. */
	readonly root: YAMLMap | null;
	private readonly text: string;
	private readonly warnings: Problem[] | null;
	private readonly lines: readonly string[];
	/** Where each line starts. */
	private readonly starts: readonly number[];
	private reported = 0;

	/** With `warnings` the file is a pack, and goes there what only the project's own rules must keep. */
	constructor(
		{ path, text }: SourceText,
		problems: Problem[],
		warnings: Problem[] | null = null,
		read: (text: string) => ReadYaml = readYaml,
	) {
		this.path = path;
		this.problems = problems;
		this.warnings = warnings;
		this.text = text;
		this.lines = text.split('\n');
		let start = 0;
		this.starts = this.lines.map(({ length }) => (start += length + 1) - length - 1);
		const { root, faults } = read(text);
		this.root = root;
		for (const [offset, message] of faults) this.report(offset, message);
	}

	/** Notes a problem at an offset of the text. */
	report(offset: number, message: string): void {
		if (++this.reported > most) return;
		const { line, column } = this.at(offset);
		const rest = this.reported === most ? ' (the first 100 problems of this file; fix these first)' : '';
		this.problems.push({ path: this.path, line, column, message: message + rest, frame: this.frame(line, column) });
	}

	/** Notes what the project's own rules may not have and a pack may: there it is a warning. */
	advise(offset: number, message: string): void {
		const { line, column } = this.at(offset);
		if (this.warnings) this.warnings.push({ path: this.path, line, column, message, frame: this.frame(line, column) });
		else this.report(offset, message);
	}

	/** Whether a text stands in the file just so: not folded over lines, not escaped. */
	hasVerbatim(text: string, offset: number): boolean {
		return this.text.startsWith(text, offset);
	}

	/** file:line of an offset. */
	place(offset: number): string {
		return `${this.path}:${this.at(offset).line}`;
	}

	private at(offset: number): { line: number; column: number } {
		const place = Math.max(0, Math.min(offset, this.text.length));
		let [low, high] = [0, this.starts.length];
		while (high - low > 1) {
			const middle = (low + high) >> 1;
			if (this.starts[middle]! <= place) low = middle;
			else high = middle;
		}
		return { line: low + 1, column: place - this.starts[low]! + 1 };
	}

	/** The line with a mark under the column; of a long line the part round it. */
	private frame(line: number, column: number): string {
		const from = Math.max(0, column - 1 - shown / 2);
		const part = (this.lines[line - 1] ?? '').slice(from, from + shown).replace(/[\u0000-\u001f\u007f-\u009f]/g, ' ');
		return `${String(line).padStart(5)} | ${part}\n      | ${' '.repeat(Math.max(0, column - 1 - from))}^`;
	}
}

/** Problems as a person reads them: file by file, from the top down; what one place lacks in one line. */
export function inOrder(problems: readonly Problem[]): Problem[] {
	const sorted = problems.toSorted(
		(a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0) || a.line - b.line || a.column - b.column,
	);
	const places = new Map<string, Problem[]>();
	for (const problem of sorted) {
		const place = `${problem.path}:${problem.line}:${problem.column}`;
		places.set(place, [...(places.get(place) ?? []), problem]);
	}
	return [...places.values()].flatMap(onePlace);
}

const lacking = /^([a-z_]+): a [a-z ]+ is needed here$/;

function onePlace(problems: readonly Problem[]): readonly Problem[] {
	const lacks = problems.filter(({ message }) => lacking.test(message));
	if (lacks.length < 2) return problems;
	const names = lacks.map(({ message }) => lacking.exec(message)![1]!);
	const message = `${names.slice(0, -1).join(', ')} and ${names.at(-1)} are needed here`;
	return [{ ...lacks[0]!, message }, ...problems.filter(problem => !lacks.includes(problem))];
}

/** A problem for a person: file:line:col, what is wrong, and the line itself. */
export function writeProblem({ path, line, column, message, frame }: Problem): string {
	return `${path}:${line}:${column}: ${message}\n${frame}`;
}
