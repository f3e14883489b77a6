import { readCell } from '../table/cell.ts';
import type { Column } from '../table/layout.ts';
import { BadTable } from '../table/problem.ts';
import type { Channel } from './channel.ts';
import { ColumnValues } from './column-values.ts';
import { columnNamed } from './header.ts';
import { wordReaders } from './word-cells.ts';

/** The columns of a table with the values in its first rows, by which they are recognized. */
export class TableBeginning {
	readonly columns: readonly Column[];
	private readonly rows: readonly (readonly string[])[];
	private readonly decimal: '.' | ',';
	private readonly values = new Map<string, ColumnValues>();

	constructor(columns: readonly Column[], rows: readonly (readonly string[])[], decimal: '.' | ',') {
		this.columns = columns;
		this.rows = rows;
		this.decimal = decimal;
	}

	/**
	 * The place of the column that a person names.
	 *
	 * @throws BadTable where none has that header
	 */
	place(header: string): number {
		const place = columnNamed(this.columns, header);
		if (place >= 0) return place;
		const headers = this.columns.map(column => column.header).join(', ');
		throw new BadTable(`no column ${JSON.stringify(header)}`, headers);
	}

	/** The values of a column, read as those of a channel. */
	valuesOf(column: number, { special }: Channel): ColumnValues {
		const reader = wordReaders[special ?? 'none'];
		const key = `${column} ${reader ? special : ''}`;
		let values = this.values.get(key);
		if (!values) {
			const read = reader ?? ((cell: string) => readCell(cell, this.decimal));
			const all = new Float64Array(this.rows.length);
			for (let row = 0; row < all.length; row++) all[row] = read(this.rows[row]![column] ?? '') ?? Number.NaN;
			values = new ColumnValues(all);
			this.values.set(key, values);
		}
		return values;
	}
}
