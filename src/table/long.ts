import { readCell } from './cell.ts';
import type { ColumnReading } from './cell-reader.ts';
import type { Column } from './layout.ts';
import type { Rows } from './rows.ts';
import type { Table } from './table.ts';

/** The places of the columns of a long table: a row a reading, with the name of what was read. */
interface Long {
	readonly time: number;
	readonly name: number;
	readonly value: number;
	readonly unit: number | null;
}

const words = {
	name: /^(?:name|channel|signal|sensor|parameter|variable|quantity|item|measurement)(?: name)?$/i,
	value: /^(?:value|reading|data)s?$/i,
	unit: /^units?$/i,
} as const;

function longOf(columns: readonly Column[]): Long | null {
	const place = (pattern: RegExp) => columns.findIndex(column => pattern.test(column.name));
	const [name, value, unit] = [place(words.name), place(words.value), place(words.unit)];
	const time = columns.findIndex((_, at) => at !== name && at !== value && at !== unit);
	return name < 0 || value < 0 || time < 0 ? null : { time, name, value, unit: unit < 0 ? null : unit };
}

const heldRows = 8192;

/** A long table (time, name, value, unit) as a wide one, a column a name; a wide table as it is. */
export function wide(table: Table): Table {
	const { columns: own, decimal } = table.layout;
	const long = longOf(own);
	if (!long) return table;
	const units = new Map<string, string>();
	for (const cells of table.beginning()) {
		const name = cells[long.name]!.trim();
		if (!units.has(name)) units.set(name, long.unit === null ? '' : cells[long.unit]!.trim());
	}
	const names = [...units.keys()];
	const time = own[long.time]!;
	const columns = [time, ...names.map(name => named(name, units.get(name)!))];
	const places = new Map(names.map((name, at) => [name, at + 1]));
	return {
		...table,
		long: true,
		layout: { ...table.layout, columns },
		*beginning(step = 1, most = Number.POSITIVE_INFINITY) {
			let [at, given] = [0, 0];
			for (const cells of table.beginning()) {
				if (at++ % step !== 0) continue;
				if (++given > most) return;
				const row = columns.map(() => '');
				row[0] = cells[long.time]!;
				row[places.get(cells[long.name]!.trim())!] = cells[long.value]!;
				yield row;
			}
		},
		async *rows(readings) {
			let current = 0;
			const byName = (cell: string): number => (current = places.get(cell) ?? 0);
			const value = (cell: string): number | undefined => {
				const reading = readings[current] ?? null;
				if (reading === null) return Number.NaN;
				return typeof reading === 'function' ? reading(cell) : readCell(cell, decimal ?? '.');
			};
			const plain = long.value < long.name || readings.slice(1).every(reading => typeof reading !== 'function');
			const long3: ColumnReading[] = [];
			long3[long.time] = readings[0] ?? null;
			long3[long.name] = byName;
			long3[long.value] = plain ? 'number' : value;
			yield* pivoted(table.rows(Array.from(own, (_, at) => long3[at] ?? null)), long, columns.length);
		},
	};
}

function named(name: string, unit: string): Column {
	return { header: unit === '' ? name : `${name} [${unit}]`, name, unit: unit === '' ? null : unit };
}

/** Readings of one instant put into one row. */
async function* pivoted(rows: AsyncIterable<Rows>, long: Long, width: number): AsyncGenerator<Rows> {
	let room = roomFor(width);
	let count = 0;
	let last = Number.NaN;
	for await (const { count: many, columns, lines } of rows) {
		const [times, names, values] = [long.time, long.name, long.value].map(at => columns[at]!) as [
			Float64Array,
			Float64Array,
			Float64Array,
		];
		for (let at = 0; at < many; at++) {
			const column = names[at]!;
			if (!(column > 0)) continue;
			const same = count > 0 && times[at] === last && Number.isNaN(room.columns[column]![count - 1]!);
			if (!same) {
				if (count === heldRows) {
					yield { count, ...room };
					room = roomFor(width);
					count = 0;
				}
				last = times[at]!;
				room.columns[0]![count] = last;
				room.lines[count] = lines[at]!;
				count++;
			}
			room.columns[column]![count - 1] = values[at]!;
		}
	}
	if (count === 0) return;
	yield { count, columns: room.columns.map(column => column.slice(0, count)), lines: room.lines.slice(0, count) };
}

const roomFor = (width: number) => ({
	columns: Array.from({ length: width }, (_, at) => new Float64Array(heldRows).fill(at === 0 ? 0 : Number.NaN)),
	lines: new Float64Array(heldRows),
});
