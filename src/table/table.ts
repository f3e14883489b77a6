import { type Bytes, cellDecoder, encodingOf, plainBytes } from './bytes.ts';
import type { ColumnReading } from './cell-reader.ts';
import { type Layout, layoutOf } from './layout.ts';
import { cellsOf, logicalLines } from './lines.ts';
import { BadTable } from './problem.ts';
import type { Counts, Rows } from './rows.ts';
import { Scanner } from './scan.ts';

/** How much of a table is looked at before its rows are read, in bytes; the whole of most. */
const looked = 1024 * 1024;
/** No line of a table of numbers is longer, in bytes. */
const longestLine = 768 * 1024;

/** A table that was opened: how it is laid out, its first cells, and its rows to be gone through once. */
export interface Table {
	readonly layout: Pick<Layout, 'delimiter' | 'decimal' | 'columns'>;
	readonly encoding: string;
	/** A row a reading: columns were made of its names. */
	readonly long: boolean;
	/** Rows of the beginning as text, in order, every `step`th of the first megabyte, so many at most; shorter ones are left out. */
	beginning(step?: number, most?: number): Iterable<readonly string[]>;
	/** Lines in it. */
	readonly linesAhead: number;
	/** Complete once the rows were gone through. */
	readonly counts: Counts;
	/** Bytes gone through so far. */
	readonly read: () => number;
	rows(readings: readonly ColumnReading[]): AsyncGenerator<Rows>;
}

/**
 * Opens a table: reads its beginning and finds out how it is laid out.
 *
 * @param isUnit says whether a text is the name of a unit
 * @throws BadTable when it is no table of numbers
 */
export async function openTable(bytes: Bytes, isUnit: (text: string) => boolean): Promise<Table> {
	const source = bytes[Symbol.asyncIterator]();
	const { start, ended } = await beginning(source);
	if (start.length === 0) throw new BadTable('nothing at all', 'a table as text, a line a row');
	const { encoding, mark } = encodingOf(start);
	const wide = encoding.startsWith('utf-16');
	const loneReturns = !start.includes(10) && start.includes(13);
	const plain = plainBytes(encoding, loneReturns);
	const decoder = cellDecoder(encoding);
	const head = plain(start.subarray(mark));
	const last = ended ? head.length : head.lastIndexOf(10) + 1;
	if (last === 0 || head.indexOf(10) > longestLine) throw tooLong(1);
	if (!ended && head.length - last > longestLine) throw tooLong(linesIn(head.subarray(0, last)) + 1);
	const text = decoder.decode(head.subarray(0, last)).replaceAll('\r\n', '\n').replace(/\r/g, ' ');
	const layout = layoutOf(text.replace(/\n$/, ''), isUnit);
	const lines = text.split('\n').slice(layout.firstLine - 1);
	const rows = text.includes('"') ? Array.from(logicalLines(lines), line => line.text) : lines;
	const counts: Counts = { rows: 0, unread: 0, faults: [] };
	let taken = start.length;
	return {
		layout,
		encoding: wide ? 'utf-16' : encoding,
		long: false,
		beginning: (step, most) => cellsIn(rows, layout, step, most),
		linesAhead: lines.length,
		counts,
		read: () => taken,
		async *rows(readings) {
			const scanner = new Scanner(layout, readings, decoder, counts);
			// What is left of a piece, before the next; always the same bytes, so that a long table leaves nothing to be collected.
			let buffer = new Uint8Array(0);
			let kept = 0;
			try {
				for (let next: Uint8Array | null = head; next !== null; ) {
					const length: number = kept + next.length;
					if (length > buffer.length) buffer = concatenated([buffer.subarray(0, kept)], length);
					buffer.set(next, kept);
					const end = buffer.subarray(0, length).lastIndexOf(10) + 1;
					if (end > 0) yield* scanner.read(buffer.subarray(0, end));
					buffer.copyWithin(0, end, length);
					kept = length - end;
					if (kept > longestLine) throw tooLong(scanner.line + 1);
					const piece = ended ? null : await source.next();
					if (piece === null || piece.done) next = null;
					else {
						taken += piece.value.length;
						next = plain(piece.value);
					}
				}
				if (kept > 0) yield* scanner.read(concatenated([buffer.subarray(0, kept), Uint8Array.of(10)], kept + 1));
				yield* scanner.end();
			} finally {
				await source.return?.();
			}
		},
	};
}

const tooLong = (line: number): BadTable =>
	new BadTable(`a line longer than ${longestLine / 1024} kB`, 'a table as text, a line a row', { line });

function linesIn(bytes: Uint8Array): number {
	let lines = 0;
	for (let at = bytes.indexOf(10); at >= 0; at = bytes.indexOf(10, at + 1)) lines++;
	return lines;
}

async function beginning(source: AsyncIterator<Uint8Array>): Promise<{ start: Uint8Array; ended: boolean }> {
	const parts: Uint8Array[] = [];
	let length = 0;
	while (length < looked) {
		const { value, done } = await source.next();
		if (done) return { start: concatenated(parts, length), ended: true };
		parts.push(new Uint8Array(value));
		length += value.length;
	}
	return { start: concatenated(parts, length), ended: false };
}

function concatenated(parts: readonly Uint8Array[], length: number): Uint8Array<ArrayBuffer> {
	const whole = new Uint8Array(length);
	let at = 0;
	for (const part of parts) {
		whole.set(part, at);
		at += part.length;
	}
	return whole;
}

function* cellsIn(
	rows: readonly string[],
	{ delimiter, columns }: Layout,
	step = 1,
	most = Number.POSITIVE_INFINITY,
): Generator<string[]> {
	let given = 0;
	for (let at = 0; at < rows.length; at += step) {
		const cells = cellsOf(rows[at]!, delimiter);
		if (cells.length < columns.length) continue;
		yield cells.slice(0, columns.length);
		if (++given >= most) return;
	}
}
