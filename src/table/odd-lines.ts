import type { Decoder } from './bytes.ts';
import type { CellReader } from './cell-reader.ts';
import type { Layout } from './layout.ts';
import { cellsOf, isOpen, longestCell } from './lines.ts';
import { shownCell } from './problem.ts';
import { type Counts, countFault, type RowBuffer } from './rows.ts';

const newline = 10;

/** Lines that are not plain cells, all there and readable: with quotes, cut short, with a cell that is nothing, with no data. */
export class OddLines {
	readonly #layout: Layout;
	readonly #cells: CellReader;
	readonly #decoder: Decoder;
	readonly #counts: Counts;
	readonly #buffer: RowBuffer;

	constructor(layout: Layout, cells: CellReader, decoder: Decoder, counts: Counts, buffer: RowBuffer) {
		this.#layout = layout;
		this.#cells = cells;
		this.#decoder = decoder;
		this.#counts = counts;
		this.#buffer = buffer;
	}

	/**
	 * Reads a line with quotes, and those that its open cells go on in.
	 *
	 * @returns where the next one starts, and how many were taken
	 */
	readQuoted(bytes: Uint8Array, start: number, line: number): { readonly next: number; readonly lines: number } {
		const first = bytes.indexOf(newline, start);
		let end = first;
		let text = this.#text(bytes, start, end);
		let lines = 1;
		while (isOpen(text) && lines < longestCell && end + 1 < bytes.length) {
			end = bytes.indexOf(newline, end + 1);
			text = this.#text(bytes, start, end);
			lines++;
		}
		if (!isOpen(text)) {
			this.#readCells(text, line);
			return { next: end + 1, lines };
		}
		text = this.#text(bytes, start, first);
		const column = text.slice(0, text.lastIndexOf('"')).split(this.#layout.delimiter).length;
		if (!this.#isNoData(text)) {
			countFault(this.#counts, line, column, `a quote that is never closed, ${shownCell(text)}`);
		}
		return { next: first + 1, lines: 1 };
	}

	/** A line that is not as it should be: cut short it is not believed; of one with an unreadable cell the rest is kept. */
	readBroken(
		bytes: Uint8Array,
		start: number,
		end: number,
		found: { line: number; values: number; fault: number },
	): void {
		this.#take(this.#text(bytes, start, end), found.line, found.values, found.fault);
	}

	#text(bytes: Uint8Array, start: number, end: number): string {
		return this.#decoder.decode(bytes.subarray(start, end)).replaceAll('\r\n', '\n').replace(/\r$/, '');
	}

	#readCells(text: string, line: number): void {
		const cells = cellsOf(text, this.#layout.delimiter);
		let values = 0;
		let fault = -1;
		for (const [column, cell] of cells.entries()) {
			const into = this.#buffer.columns[column];
			if (into === undefined && cell.trim() !== '' && fault < 0) fault = column;
			if (!into) continue;
			const value = this.#cells.read(cell, column);
			if (value === undefined && fault < 0) fault = column;
			into[this.#buffer.count] = value ?? Number.NaN;
			if (!Number.isNaN(into[this.#buffer.count])) values++;
		}
		if (values > 0 && cells.length >= this.#layout.columns.length && fault < 0) this.#keep(line);
		else this.#take(text, line, values, fault);
	}

	#take(text: string, line: number, values: number, fault: number): void {
		if (this.#isNoData(text)) return;
		const width = this.#layout.columns.length;
		const cells = cellsOf(text, this.#layout.delimiter);
		if (cells.length < width) {
			countFault(this.#counts, line, cells.length, `a line of ${cells.length} of ${width} cells, ${shownCell(text)}`);
			return;
		}
		if (fault < 0) return;
		const found = shownCell(cells[fault] ?? '');
		countFault(this.#counts, line, fault + 1, fault < width ? found : `more than ${width} cells, ${found}`);
		if (fault < width && values > 0) this.#keep(line);
	}

	#keep(line: number): void {
		this.#buffer.keep(line);
		this.#counts.rows++;
	}

	/** A line that is neither a row nor a broken one: blank, a comment, a header that is repeated. */
	#isNoData(text: string): boolean {
		const plain = text.trim();
		return plain === '' || /^(?:#|\/\/)/.test(plain) || this.#layout.headerLines.includes(text);
	}
}
