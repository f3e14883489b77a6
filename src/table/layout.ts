import { type Decimal, isClock, isInstant, isMissing, isSimple, readCell } from './cell.ts';
import { decimalOf } from './decimal.ts';
import { cellsOf, type LogicalLine, logicalLines } from './lines.ts';
import { BadTable } from './problem.ts';

/** How a table is laid out, found from its beginning. */
export interface Layout {
	readonly delimiter: string;
	/** Null as long as no cell had decimals. */
	readonly decimal: Decimal | null;
	readonly columns: readonly Column[];
	/** The texts of the header lines, to recognize them further down. */
	readonly headerLines: readonly string[];
	/** The first line of data, from 1. */
	readonly firstLine: number;
}

/** A column by its header. */
export interface Column {
	/** As in the file, unit included: `Boost [psi]`. A column without one is named by its place: `column 3`. */
	readonly header: string;
	/** The header without its unit. */
	readonly name: string;
	/** The unit beside the name or in the line below; null where there is none. */
	readonly unit: string | null;
}

/** More columns than any logger has. */
export const mostColumns = 2000;

/** Lines that are looked at to find delimiter and header. */
const looked = 400;

const delimiters = ['\t', ';', '|', ','] as const;

type Sort = 'number' | 'text' | 'missing';

function sortOf(cell: string): Sort {
	if (isSimple(cell)) return 'number';
	if (isMissing(cell.trim())) return 'missing';
	const number =
		isClock(cell) || isInstant(cell) || readCell(cell, '.') !== undefined || readCell(cell, ',') !== undefined;
	return number ? 'number' : 'text';
}

/**
 * The layout of a table whose beginning is `head`: whole lines, line ends as \n.
 *
 * @param isUnit says whether a text is the name of a unit
 * @throws BadTable when no delimiter gives columns of numbers
 */
export function layoutOf(head: string, isUnit: (text: string) => boolean): Layout {
	const lines = head.split('\n', looked * 3);
	const logical: LogicalLine[] = [];
	for (const line of logicalLines(lines)) if (logical.push(line) >= looked) break;
	const stated = /^sep=(.)$/.exec(logical[0]?.text.trim() ?? '')?.[1];
	const best = (stated ? [stated] : delimiters)
		.map(delimiter => ({ delimiter, ...columnsBy(logical, delimiter) }))
		.reduce((best, next) => (next.score > best.score ? next : best));
	if (best.score <= 0) {
		const begins = logical.find(({ text }) => text.trim() !== '')?.text ?? '';
		throw new BadTable(
			begins === '' ? 'nothing' : 'no columns of numbers',
			'a table as text: a line a row, values apart by commas, semicolons, tabs or |, headers in a line above',
		);
	}
	const { delimiter, width, rows } = best;
	if (width > mostColumns) {
		throw new BadTable(`${width} columns`, `at most ${mostColumns}`, { line: logical[0]!.line });
	}
	const first = firstData(rows, width);
	const above = rows.slice(0, first).filter(row => row.cells.length >= width - 1 && row.texts >= 1);
	const last = above.at(-1);
	const before = above.at(-2);
	const units = before && last && areUnits(last.cells, isUnit) ? last : null;
	const header = units ? before : last;
	const names = header?.cells ?? [];
	const columns = Array.from({ length: width }, (_, at) => columnOf(names[at] ?? '', units?.cells[at], at, isUnit));
	// A delimiter at the end of each line makes a column of nothing.
	while (
		columns.length > 1 &&
		(names[columns.length - 1] ?? '').trim() === '' &&
		isEmpty(rows, first, columns.length - 1)
	) {
		columns.pop();
	}
	return {
		delimiter,
		decimal: decimalOf(bodyOf(head, rows[first]!.line), delimiter),
		columns,
		headerLines: [header, units].flatMap(row => (row ? [row.text] : [])),
		firstLine: rows[first]!.line,
	};
}

interface Row extends LogicalLine {
	readonly cells: readonly string[];
	readonly numbers: number;
	readonly texts: number;
}

/** How well the lines fall into columns of numbers by one delimiter: cells that are numbers, less twice those that are not. */
function columnsBy(logical: readonly LogicalLine[], delimiter: string): { score: number; width: number; rows: Row[] } {
	// Most are in no line; to look at whole lines as cells takes longest.
	if (!logical.some(({ text }) => text.includes(delimiter))) return { score: 0, width: 0, rows: [] };
	const rows = logical.map(({ line, text, lines }): Row => {
		const cells = cellsOf(text, delimiter);
		let [numbers, texts] = [0, 0];
		if (cells.length > mostColumns) numbers = cells.length;
		else
			for (const cell of cells) {
				const sort = sortOf(cell);
				if (sort === 'number') numbers++;
				else if (sort === 'text') texts++;
			}
		return { line, text, lines, cells, numbers, texts };
	});
	const widths = new Map<number, number>();
	for (const { cells, numbers } of rows) {
		if (cells.length > 1 && numbers > 0) widths.set(cells.length, (widths.get(cells.length) ?? 0) + 1);
	}
	const [width] = [...widths].reduce((most, next) => (next[1] > most[1] ? next : most), [0, 0]);
	const score = rows
		.filter(row => row.cells.length === width && row.numbers > 0)
		.reduce((sum, { numbers, texts }) => sum + numbers - texts / 2, 0);
	return { score, width, rows };
}

/** The first row of data: as wide as most, with a number, and no more texts than the rows that follow it have at most. */
function firstData(rows: readonly Row[], width: number): number {
	const like = rows.filter(row => row.cells.length === width && row.numbers > 0);
	const texts = like.map(row => row.texts).sort((a, b) => a - b)[Math.floor(like.length / 2)]!;
	return rows.findIndex(row => row.cells.length === width && row.numbers > 0 && row.texts <= texts);
}

const isEmpty = (rows: readonly Row[], first: number, at: number): boolean =>
	rows.slice(first).every(({ cells }) => (cells[at] ?? '').trim() === '');

function areUnits(cells: readonly string[], isUnit: (text: string) => boolean): boolean {
	const filled = cells.map(bare).filter(cell => cell !== '');
	return filled.length > 0 && filled.filter(isUnit).length >= filled.length / 2;
}

/** A unit's cell without its brackets. */
const bare = (cell: string): string => cell.trim().replace(/^[[({]\s*(.*?)\s*[\])}]$/, '$1');

function columnOf(cell: string, below: string | undefined, at: number, isUnit: (text: string) => boolean): Column {
	const written = cell.replace(/^\uFEFF/, '').trim();
	if (below !== undefined && bare(below) !== '') {
		const unit = bare(below);
		return { header: written === '' ? `column ${at + 1}` : `${written} [${unit}]`, name: written, unit };
	}
	if (written === '') return { header: `column ${at + 1}`, name: '', unit: null };
	return { header: written, ...splitUnit(written, isUnit) };
}

/** A header's name and unit: `Boost [psi]`, `Boost (psi)`, `Boost, psi`, `Boost/psi`. What is no unit stays in the name. */
export function splitUnit(header: string, isUnit: (text: string) => boolean): { name: string; unit: string | null } {
	const [, name, inside] = /^(.*?)\s*[[({]\s*([^[\](){}]*?)\s*[\])}]$/.exec(header) ?? [];
	if (name !== undefined && name !== '' && inside && isUnit(inside)) return { name, unit: inside };
	for (const sign of [',', ' - ', '/', ' in ']) {
		const from = header.lastIndexOf(sign);
		const unit = header.slice(from + sign.length).trim();
		if (from > 0 && unit !== '' && isUnit(unit)) return { name: header.slice(0, from).trim(), unit };
	}
	return { name: header, unit: null };
}

/** The text from a line on. */
function bodyOf(text: string, line: number): string {
	let at = 0;
	for (let skipped = 1; skipped < line; skipped++) at = text.indexOf('\n', at) + 1;
	return text.slice(at);
}
