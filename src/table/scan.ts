import type { Decoder } from './bytes.ts';
import { type Decimal, readCell, readClock } from './cell.ts';
import type { Layout } from './layout.ts';
import { cellsOf, isOpen, longestCell } from './lines.ts';
import { shownCell } from './problem.ts';
import { type Counts, countFault, Room, type Rows } from './rows.ts';

/** How a column is read: not at all, as numbers, as `HH:MM:SS.fff` in seconds, or by a function: NaN is no reading, undefined is unreadable. */
export type ColumnReading = null | 'number' | 'clock' | ((cell: string) => number | undefined);

const [newline, quote, minus, colon, returns] = [10, 34, 45, 58, 13];
const powers = Float64Array.from({ length: 16 }, (_, digits) => 10 ** digits);
const skipped = 0;
const number = 1;
const clock = 2;
const byFunction = 3;

/**
 * Turns bytes of whole lines into columns of numbers. Lines of plain cells are read byte by byte, without a text being made
 * of them; a line with quotes goes through the CSV library, cell by cell. Both give the same: a test holds it.
 */
export class Scanner {
	/** The line that was read last, from 1. */
	line = 0;
	readonly #layout: Layout;
	readonly #readings: readonly ColumnReading[];
	readonly #sorts: Uint8Array;
	readonly #decoder: Decoder;
	readonly #counts: Counts;
	readonly #room: Room;
	#decimal: Decimal;
	#decided: boolean;

	constructor(layout: Layout, readings: readonly ColumnReading[], decoder: Decoder, counts: Counts) {
		this.#layout = layout;
		this.#readings = layout.columns.map((_, at) => readings[at] ?? null);
		this.#sorts = Uint8Array.from(this.#readings, reading =>
			reading === null ? skipped : reading === 'number' ? number : reading === 'clock' ? clock : byFunction,
		);
		this.#decoder = decoder;
		this.#counts = counts;
		this.#room = new Room(this.#readings.map(reading => reading !== null));
		this.#decimal = layout.decimal ?? '.';
		this.#decided = layout.decimal !== null || layout.delimiter === ',';
	}

	/** Reads whole lines: the last byte is a line end. */
	*read(bytes: Uint8Array): Generator<Rows> {
		for (let at = 0; at < bytes.length; ) {
			at = this.#readLines(bytes, at);
			if (this.#room.full) yield this.#room.take();
		}
	}

	/** What is left at the end of the text. */
	*end(): Generator<Rows> {
		if (this.#room.count > 0) yield this.#room.take();
	}

	/** Reads lines until the room is full; gives where it stopped. */
	#readLines(bytes: Uint8Array, from: number): number {
		const sorts = this.#sorts;
		const width = sorts.length;
		const delimiter = this.#layout.delimiter.charCodeAt(0);
		let at = from;
		while (at < bytes.length && !this.#room.full) {
			this.line++;
			const start = at;
			if (this.line < this.#layout.firstLine) {
				at = bytes.indexOf(newline, at) + 1;
				continue;
			}
			const decimal = this.#decimal === '.' ? 46 : 44;
			const { columns, count: row } = this.#room;
			let column = 0;
			let values = 0;
			let fault = -1;
			let byte = 0;
			do {
				byte = bytes[at]!;
				const cell = at;
				const sort = column < width ? sorts[column]! : skipped;
				let value: number | undefined = Number.NaN;
				let plain = false;
				if (sort === number || sort === clock) {
					if (byte === minus) byte = bytes[++at]!;
					const first = at;
					let digits = 0;
					let [sum, decimals] = [0, 0];
					while (byte >= 48 && byte <= 57) {
						digits = digits * 10 + byte - 48;
						byte = bytes[++at]!;
						if (byte === colon && sort === clock) {
							sum = (sum + digits) * 60;
							digits = 0;
							byte = bytes[++at]!;
						}
					}
					let length = at - first;
					if (byte === decimal) {
						const point = at;
						byte = bytes[++at]!;
						while (byte >= 48 && byte <= 57) {
							digits = digits * 10 + byte - 48;
							byte = bytes[++at]!;
						}
						decimals = at - point - 1;
						length += decimals;
					}
					const ends = byte === delimiter || byte === newline || (byte === returns && bytes[at + 1] === newline);
					// Below 2^53 the digits and the power of ten are exact, so that their quotient is rounded once, as Number does.
					if (ends && length > 0 && length < 16 && (sort === number || sum > 0)) {
						value = sum + digits / powers[decimals]!;
						if (first > cell) value = -value;
						plain = true;
					} else if (ends && at === cell) plain = true;
					else byte = bytes[(at = cell)]!;
				}
				if (!plain) {
					while (byte !== delimiter && byte !== newline && byte !== quote) byte = bytes[++at]!;
					if (sort !== skipped && byte !== quote) {
						value = this.#cell(this.#decoder.decode(bytes.subarray(cell, at)), column);
					} else if (column >= width && fault < 0 && at > cell && bytes[cell] !== returns) fault = column;
				}
				if (byte === quote) break;
				if (byte === returns) byte = bytes[++at]!;
				if (value === undefined) {
					if (fault < 0) fault = column;
					value = Number.NaN;
				} else if (!Number.isNaN(value)) values++;
				if (sort !== skipped) columns[column]![row] = value;
				column++;
				at++;
			} while (byte !== newline);
			if (byte === quote) at = this.#readQuoted(bytes, start);
			else if (values > 0 && column >= width && fault < 0) this.#keep();
			else this.#readOdd(this.#text(bytes, start, at - 1), values, fault);
		}
		return at;
	}

	#keep(): void {
		this.#room.keep(this.line);
		this.#counts.rows++;
	}

	/** A cell that is no plain number. */
	#cell(cell: string, column: number): number | undefined {
		const reading = this.#readings[column]!;
		if (reading === 'clock') return readClock(cell);
		if (reading !== 'number') return reading!(cell.trim());
		const value = readCell(cell, this.#decimal);
		if (this.#decided || !/\d[.,]\d/.test(cell)) return value;
		// The first decimals of the whole table decide; all before were whole numbers, the same by either.
		this.#decided = true;
		this.#decimal = /,\d+$/.test(cell.trim()) ? ',' : '.';
		return readCell(cell, this.#decimal);
	}

	#text(bytes: Uint8Array, start: number, end: number): string {
		return this.#decoder.decode(bytes.subarray(start, end)).replaceAll('\r\n', '\n').replace(/\r$/, '');
	}

	/** Reads a line with quotes, and those that its open cells go on in; gives where the next one starts. */
	#readQuoted(bytes: Uint8Array, start: number): number {
		const first = bytes.indexOf(newline, start);
		let end = first;
		let text = this.#text(bytes, start, end);
		let lines = 1;
		while (isOpen(text) && lines < longestCell && end + 1 < bytes.length) {
			end = bytes.indexOf(newline, end + 1);
			text = this.#text(bytes, start, end);
			lines++;
		}
		if (isOpen(text)) {
			text = this.#text(bytes, start, first);
			const column = text.slice(0, text.lastIndexOf('"')).split(this.#layout.delimiter).length;
			if (!this.#isNoData(text)) {
				countFault(this.#counts, this.line, column, `a quote that is never closed, ${shownCell(text)}`);
			}
			return first + 1;
		}
		this.#readCells(text);
		this.line += lines - 1;
		return end + 1;
	}

	#readCells(text: string): void {
		const cells = cellsOf(text, this.#layout.delimiter);
		let values = 0;
		let fault = -1;
		for (const [column, cell] of cells.entries()) {
			const into = this.#room.columns[column];
			if (into === undefined && cell.trim() !== '' && fault < 0) fault = column;
			if (!into) continue;
			const value = this.#cell(cell, column);
			if (value === undefined && fault < 0) fault = column;
			into[this.#room.count] = value ?? Number.NaN;
			if (!Number.isNaN(into[this.#room.count])) values++;
		}
		if (values > 0 && cells.length >= this.#sorts.length && fault < 0) this.#keep();
		else this.#readOdd(text, values, fault);
	}

	/** A line that is neither a row nor a broken one: blank, a comment, a header that is repeated. */
	#isNoData(text: string): boolean {
		const plain = text.trim();
		return plain === '' || /^(?:#|\/\/)/.test(plain) || this.#layout.headerLines.includes(text);
	}

	/** A line that is not as it should be: cut short it is not believed; of one with an unreadable cell the rest is kept. */
	#readOdd(text: string, values: number, fault: number): void {
		if (this.#isNoData(text)) return;
		const width = this.#sorts.length;
		const cells = cellsOf(text, this.#layout.delimiter);
		if (cells.length < width) {
			countFault(
				this.#counts,
				this.line,
				cells.length,
				`a line of ${cells.length} of ${width} cells, ${shownCell(text)}`,
			);
			return;
		}
		if (fault < 0) return;
		const found = shownCell(cells[fault] ?? '');
		countFault(this.#counts, this.line, fault + 1, fault < width ? found : `more than ${width} cells, ${found}`);
		if (fault < width && values > 0) this.#keep();
	}
}
