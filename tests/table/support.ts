import type { ColumnReading } from '../../src/table/cell-reader.ts';
import { wide } from '../../src/table/long.ts';
import { openTable, type Table } from '../../src/table/table.ts';

const units = /^(?:s|ms|rpm|%|kPa|psi|V|°C|degC|km\/h|g\/s)$/i;
export const isUnit = (text: string): boolean => units.test(text);

/** A text as bytes in pieces of a given length. */
export async function* pieces(text: string | Uint8Array, size = 7): AsyncGenerator<Uint8Array> {
	const bytes = typeof text === 'string' ? new TextEncoder().encode(text) : text;
	for (let at = 0; at < bytes.length; at += size) yield bytes.slice(at, at + size);
}

export const open = async (text: string | Uint8Array, size?: number): Promise<Table> =>
	wide(await openTable(pieces(text, size), isUnit));

/** All rows of a table, each a list of its numbers. */
export async function numbers(table: Table, readings?: readonly ColumnReading[]): Promise<number[][]> {
	const all: number[][] = [];
	for await (const { count, columns } of table.rows(readings ?? table.layout.columns.map(() => 'number'))) {
		for (let row = 0; row < count; row++) all.push(columns.map(column => column?.[row] ?? Number.NaN));
	}
	return all;
}

/** A table's text read whole. */
export const read = async (text: string | Uint8Array, readings?: readonly ColumnReading[]) => {
	const table = await open(text);
	return { ...table.layout, rows: await numbers(table, readings), counts: table.counts };
};
