import { type Decimal, readCell, readClock } from './cell.ts';
import type { Layout } from './layout.ts';

/** How a column is read: not at all, as numbers, as `HH:MM:SS.fff` in seconds, or by a function: NaN is no reading, undefined is unreadable. */
export type ColumnReading = null | 'number' | 'clock' | ((cell: string) => number | undefined);

/** Reads cells as texts, by their columns. The first decimals of a whole table decide how all are written. */
export class CellReader {
	readonly readings: readonly ColumnReading[];
	decimal: Decimal;
	#decided: boolean;

	constructor({ columns, decimal, delimiter }: Layout, readings: readonly ColumnReading[]) {
		this.readings = columns.map((_, at) => readings[at] ?? null);
		this.decimal = decimal ?? '.';
		this.#decided = decimal !== null || delimiter === ',';
	}

	read(cell: string, column: number): number | undefined {
		const reading = this.readings[column]!;
		if (reading === 'clock') return readClock(cell);
		if (reading !== 'number') return reading!(cell.trim());
		const value = readCell(cell, this.decimal);
		if (this.#decided || !/\d[.,]\d/.test(cell)) return value;
		// All before were whole numbers, the same by either.
		this.#decided = true;
		this.decimal = /,\d+$/.test(cell.trim()) ? ',' : '.';
		return readCell(cell, this.decimal);
	}
}
