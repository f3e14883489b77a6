import { cellsOf, logicalLines } from './lines.ts';
import { BadTable, placed, shownCell } from './problem.ts';

/** A row of a small table: its line, from 1, and its cells by the name of their column. */
export interface SmallRow {
	readonly line: number;
	/** Which column, from 1, each name is. */
	readonly columns: Readonly<Record<string, number>>;
	readonly cells: Readonly<Record<string, string>>;
}

/** A column that is looked for. */
export interface Wanted {
	/** The name of the column in what comes out. */
	readonly id: string;
	/** Headers it is known by; case, spaces, hyphens and underscores do not matter. */
	readonly headers: readonly string[];
	readonly optional?: boolean;
}

/** Everything that is wrong with a table, a line each. */
export interface Small {
	readonly rows: readonly SmallRow[];
	readonly problems: readonly string[];
}

const keyOf = (header: string): string => header.toLowerCase().replace(/[\s_\-.]+/g, '');

/**
 * Reads a table that a person wrote, strictly: the first line that is no comment is the header, each column is found by its
 * header, and every row that is not as the header says is a problem with its line.
 *
 * @throws BadTable when it has no such header
 */
export function smallTable(text: string, wanted: readonly Wanted[]): Small {
	const lines = text.replace(/^\uFEFF/, '').split(/\r\n?|\n/);
	const rows = [...logicalLines(lines)].filter(({ text }) => text.trim() !== '' && !text.trimStart().startsWith('#'));
	const [header, ...below] = rows;
	const accepted = `a header line with ${wanted.map(({ headers }) => headers[0]).join(', ')}`;
	if (!header) throw new BadTable('nothing', accepted);
	const delimiter = ['\t', ';', '|', ','].reduce((best, next) =>
		cellsOf(header.text, next).length > cellsOf(header.text, best).length ? next : best,
	);
	const headers = cellsOf(header.text, delimiter).map(keyOf);
	const problems: string[] = [];
	const places = new Map<number, string>();
	for (const { id, headers: known, optional } of wanted) {
		const found = headers.flatMap((own, at) => (known.some(name => keyOf(name) === own) ? [at] : []));
		if (found.length > 1) {
			throw new BadTable(`${found.length} columns for ${known[0]}`, 'one', {
				line: header.line,
				column: found[1]! + 1,
			});
		}
		if (found.length === 1) places.set(found[0]!, id);
		else if (!optional) throw new BadTable(`no column ${known[0]}`, accepted, { line: header.line });
	}
	const columns = Object.fromEntries([...places].map(([at, id]) => [id, at + 1]));
	const read = below.flatMap(({ line, text }): SmallRow[] => {
		const cells = cellsOf(text, delimiter);
		while (cells.length > headers.length && cells.at(-1)!.trim() === '') cells.pop();
		if (cells.length === headers.length) {
			const named = [...places].map(([at, id]) => [id, cells[at]!.trim()] as const);
			return [{ line, columns, cells: Object.fromEntries(named) }];
		}
		problems.push(`${placed({ line })}: found ${cells.length} cells, ${shownCell(text)}; accepted: ${headers.length}`);
		return [];
	});
	return { rows: read, problems };
}
