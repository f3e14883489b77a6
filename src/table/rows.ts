import { placed } from './problem.ts';

/** Rows in a row, in the order of the file. A column that is not read is null; NaN where a cell holds no reading. */
export interface Rows {
	readonly count: number;
	readonly columns: readonly (Float64Array | null)[];
	/** The line of each row, from 1. */
	readonly lines: Float64Array;
}

/** Counted while rows are read. */
export interface Counts {
	/** Lines with values. */
	rows: number;
	/** Lines that could not be read, or not whole. */
	unread: number;
	/** What was wrong with the first three, with line and column. */
	readonly faults: string[];
}

const mostFaults = 3;

/** Counts a line that cannot be read. */
export function countFault(counts: Counts, line: number, column: number, found: string): void {
	counts.unread++;
	if (counts.faults.length < mostFaults) counts.faults.push(`${placed({ line, column })}: found ${found}`);
}

/** How many rows are handed over at once. */
const together = 8192;

/** Where rows are put together: each time that it is full, new columns are begun. */
export class RowBuffer {
	/** The row that is being written; it counts once it is kept. */
	count = 0;
	columns: readonly (Float64Array | null)[] = [];
	#lines = new Float64Array(0);
	readonly #read: readonly boolean[];

	/** @param read which columns are read at all */
	constructor(read: readonly boolean[]) {
		this.#read = read;
		this.#begin();
	}

	get full(): boolean {
		return this.count === together;
	}

	keep(line: number): void {
		this.#lines[this.count++] = line;
	}

	/** Hands over what there is. */
	take(): Rows {
		const { count, columns } = this;
		const cut = (whole: Float64Array) => (count === together ? whole : whole.slice(0, count));
		const rows = { count, columns: columns.map(column => column && cut(column)), lines: cut(this.#lines) };
		this.#begin();
		return rows;
	}

	#begin(): void {
		this.columns = this.#read.map(read => (read ? new Float64Array(together) : null));
		this.#lines = new Float64Array(together);
		this.count = 0;
	}
}
