import type { Decoder } from './bytes.ts';
import { CellReader, type ColumnReading } from './cell-reader.ts';
import type { Layout } from './layout.ts';
import { OddLines } from './odd-lines.ts';
import { type Counts, RowBuffer, type Rows } from './rows.ts';

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
	readonly #cells: CellReader;
	readonly #sorts: Uint8Array;
	readonly #decoder: Decoder;
	readonly #counts: Counts;
	readonly #buffer: RowBuffer;
	readonly #odd: OddLines;

	constructor(layout: Layout, readings: readonly ColumnReading[], decoder: Decoder, counts: Counts) {
		this.#layout = layout;
		this.#cells = new CellReader(layout, readings);
		this.#sorts = Uint8Array.from(this.#cells.readings, reading =>
			reading === null ? skipped : reading === 'number' ? number : reading === 'clock' ? clock : byFunction,
		);
		this.#decoder = decoder;
		this.#counts = counts;
		this.#buffer = new RowBuffer(this.#cells.readings.map(reading => reading !== null));
		this.#odd = new OddLines(layout, this.#cells, decoder, counts, this.#buffer);
	}

	/** Reads whole lines: the last byte is a line end. */
	*read(bytes: Uint8Array): Generator<Rows> {
		for (let at = 0; at < bytes.length; ) {
			at = this.#readLines(bytes, at);
			if (this.#buffer.full) yield this.#buffer.take();
		}
	}

	/** What is left at the end of the text. */
	*end(): Generator<Rows> {
		if (this.#buffer.count > 0) yield this.#buffer.take();
	}

	/** Reads lines until the buffer is full; gives where it stopped. */
	#readLines(bytes: Uint8Array, from: number): number {
		const sorts = this.#sorts;
		const width = sorts.length;
		const delimiter = this.#layout.delimiter.charCodeAt(0);
		let at = from;
		while (at < bytes.length && !this.#buffer.full) {
			this.line++;
			const start = at;
			if (this.line < this.#layout.firstLine) {
				at = bytes.indexOf(newline, at) + 1;
				continue;
			}
			const decimal = this.#cells.decimal === '.' ? 46 : 44;
			const { columns, count: row } = this.#buffer;
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
					let sum = 0;
					let decimals = 0;
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
						value = this.#cells.read(this.#decoder.decode(bytes.subarray(cell, at)), column);
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
			if (byte === quote) {
				const { next, lines } = this.#odd.readQuoted(bytes, start, this.line);
				at = next;
				this.line += lines - 1;
			} else if (values > 0 && column >= width && fault < 0) {
				this.#buffer.keep(this.line);
				this.#counts.rows++;
			} else this.#odd.readBroken(bytes, start, at - 1, { line: this.line, values, fault });
		}
		return at;
	}
}
