import { isMap, isScalar, isSeq, LineCounter, parseDocument, type YAMLMap, type Node as YamlNode } from 'yaml';

/** A file of rules/ as text, with its path inside the folder. */
export interface SourceText {
	readonly path: string;
	readonly text: string;
}

/** Something wrong in a rule file: where, what, and how to mend it. */
export interface Problem {
	readonly path: string;
	readonly line: number;
	readonly column: number;
	readonly message: string;
	readonly frame: string;
}

/** One parsed file and the problems found in it so far. */
export class Source {
	readonly path: string;
	readonly problems: Problem[];
	readonly root: YAMLMap | null;
	private readonly lines = new LineCounter();
	private readonly text: string;

	constructor({ path, text }: SourceText, problems: Problem[]) {
		this.path = path;
		this.text = text;
		this.problems = problems;
		const document = parseDocument(text, {
			lineCounter: this.lines,
			uniqueKeys: true,
			schema: 'core',
			merge: false,
			strict: true,
		});
		for (const error of document.errors)
			this.report(error.pos[0], (error.message.split('\n')[0] ?? '').replace(/ at line .*$/, ''));
		const alias = text.search(/(^|[\s[{,:-])[&*][A-Za-z0-9_]/m);
		if (document.errors.length === 0 && alias >= 0 && hasAlias(document.contents)) {
			this.report(alias, 'anchors and aliases are not used in rule files: write it out');
		}
		const usable = document.errors.length === 0 && this.problems.every(problem => problem.path !== path);
		this.root = usable && isMap(document.contents) ? document.contents : null;
		if (usable && this.root === null)
			this.report(0, 'a rule file is a mapping of names (topic:, questions:, rules: ...)');
	}

	/** Notes a problem at an offset of the text. */
	report(offset: number, message: string): void {
		const { line, col } = this.lines.linePos(Math.max(0, Math.min(offset, this.text.length)));
		const source = (this.text.split('\n')[line - 1] ?? '').slice(0, 160).replace(/\t/g, ' ');
		const frame = `${String(line).padStart(5)} | ${source}\n      | ${' '.repeat(Math.min(160, Math.max(0, col - 1)))}^`;
		this.problems.push({ path: this.path, line: Math.max(1, line), column: Math.max(1, col), message, frame });
	}

	/** file:line of an offset. */
	place(offset: number): string {
		return `${this.path}:${Math.max(1, this.lines.linePos(offset).line)}`;
	}
}

function hasAlias(node: unknown): boolean {
	const open: unknown[] = [node];
	for (let next = open.pop(); next !== undefined; next = open.pop()) {
		if (isMap(next)) for (const pair of next.items) open.push(pair.key ?? 0, pair.value ?? 0);
		else if (isSeq(next)) open.push(...next.items.map(item => item ?? 0));
		else if (next && typeof next === 'object' && ('anchor' in next || 'source' in next)) {
			if (!isScalar(next) || next.anchor) return true;
		}
		if (next && typeof next === 'object' && 'anchor' in next && (next as { anchor?: string }).anchor) return true;
	}
	return false;
}

/** Where a YAML node starts. */
export function offsetOf(node: unknown): number {
	return ((node as YamlNode | null)?.range?.[0] as number | undefined) ?? 0;
}

/** One line an error, for a person: file:line:col, what is wrong, and the line itself. */
export function writeProblem({ path, line, column, message, frame }: Problem): string {
	return `${path}:${line}:${column}: ${message}\n${frame}`;
}
