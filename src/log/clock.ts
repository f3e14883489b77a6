import { isClock, isInstant, readCell, readInstant } from '../table/cell.ts';
import type { ColumnReading } from '../table/cell-reader.ts';
import type { Column } from '../table/layout.ts';
import { BadTable } from '../table/problem.ts';
import type { Rows } from '../table/rows.ts';
import { unitNamed } from '../units/names.ts';
import type { ColumnMapping } from './column-mapping.ts';
import { ColumnValues } from './column-values.ts';
import { columnNamed, headerKey } from './header.ts';

/** How the time of each row is found. */
export interface Clock {
	/** Its place in the table; null where rows are counted. */
	readonly column: number | null;
	readonly unit: string;
	readonly reading: ColumnReading;
	/** Seconds of the rows, since the first of all. Keeps where it is from one call to the next. */
	seconds(rows: Rows): Float64Array;
	readonly notes: readonly string[];
}

const accepted = '--channel time=HEADER@UNIT, or --channel time=#@20Hz where rows come 20 times a second';

/**
 * Finds the column of time and how it is written: a clock, an instant, seconds or parts of them, or a count at a rate.
 *
 * @param known headers that time is known by, the likeliest first
 * @throws BadTable without any
 */
export function clockOf(
	columns: readonly Column[],
	beginning: readonly (readonly string[])[],
	decimal: '.' | ',',
	known: readonly string[],
	mapping: ColumnMapping | undefined,
): Clock {
	if (mapping?.header === '#')
		return counted(rateOf(mapping.unit) ?? refuse(`${mapping.unit ?? 'no rate'} for a count of rows`));
	const column = mapping ? named(columns, mapping.header) : found(columns, beginning, known);
	if (column === null) refuse('no column of time');
	const cells = beginning.map(row => row[column] ?? '').filter(cell => cell.trim() !== '');
	const mostly = (holds: (cell: string) => boolean) => cells.filter(holds).length > cells.length / 2;
	if (mostly(isClock)) return ticking(column, 'h:min:s', 'clock', 1, [], true);
	if (mostly(isInstant)) return ticking(column, 'ISO 8601', readInstant, 1, []);
	const written = mapping?.unit ?? columns[column]!.unit;
	const rate = written === null ? null : rateOf(written);
	if (rate) return ticking(column, `${rate} Hz`, 'number', 1 / rate, []);
	const unit = written === null ? undefined : unitNamed(written, ['time']);
	if (unit) return ticking(column, unit.symbol, 'number', unit.factor, []);
	if (mapping?.unit) refuse(`the unit ${JSON.stringify(mapping.unit)} for time`);
	const values = new ColumnValues(cells.map(cell => readCell(cell, decimal) ?? Number.NaN));
	if (values.sorted.length < cells.length / 2) refuse(`${columns[column]!.header} without times in it`);
	return byStep(column, columns[column]!.header, values.all);
}

function refuse(what: string): never {
	throw new BadTable(what, accepted);
}

function rateOf(text: string | null): number | null {
	const [, digits] = /^(\d+(?:\.\d+)?)\s*(?:hz|\/s|per second)$/i.exec(text ?? '') ?? [];
	const rate = Number(digits);
	return rate > 0 ? rate : null;
}

function named(columns: readonly Column[], header: string): number {
	const at = columnNamed(columns, header);
	return at < 0
		? refuse(`no column ${JSON.stringify(header)}; there are ${columns.map(({ header }) => header).join(', ')}`)
		: at;
}

function found(
	columns: readonly Column[],
	beginning: readonly (readonly string[])[],
	known: readonly string[],
): number | null {
	for (const name of known) {
		const at = columns.findIndex(column => headerKey(column.name) === headerKey(name));
		if (at >= 0) return at;
	}
	// Without a header that says so: a first column of clocks or instants.
	const first = beginning.map(row => row[0] ?? '');
	return first.length > 0 && first.every(cell => cell === '' || isClock(cell) || isInstant(cell)) ? 0 : null;
}

/** Seconds, unless a row comes every 5 or more of them: then thousandths, or millionths. */
function byStep(column: number, header: string, times: Float64Array): Clock {
	const steps = new ColumnValues(
		times
			.subarray(1)
			.map((time, at) => time - times[at]!)
			.filter(step => step > 0),
	);
	const step = steps.at(0.5);
	const [unit, factor] = !(step >= 5)
		? (['s', 1] as const)
		: step < 5000
			? (['ms', 1e-3] as const)
			: (['us', 1e-6] as const);
	const note = `${header}: its header has no unit; a row comes every ${Number(step.toPrecision(3))} of it, so it is ${unit}`;
	return ticking(column, unit, 'number', factor, unit === 's' ? [] : [note]);
}

/** s */
const [day, halfDay] = [86_400, 43_200];

function ticking(
	column: number,
	unit: string,
	reading: ColumnReading,
	factor: number,
	notes: readonly string[],
	daily = false,
): Clock {
	let first = Number.NaN;
	let last = Number.NaN;
	let days = 0;
	return {
		column,
		unit,
		reading,
		notes,
		seconds({ columns, count }) {
			const read = columns[column]!;
			const seconds = new Float64Array(count);
			for (let row = 0; row < count; row++) {
				let time = read[row]! * factor;
				if (daily) {
					// A clock that goes back by more than half a day has passed midnight; by less, it was set.
					if (last - time > halfDay) days++;
					else if (time - last > halfDay && days > 0) days--;
					if (!Number.isNaN(time)) last = time;
					time += days * day;
				}
				if (Number.isNaN(first)) first = time;
				seconds[row] = time - first;
			}
			return seconds;
		},
	};
}

function counted(rate: number): Clock {
	let row = 0;
	return {
		column: null,
		unit: `${rate} Hz`,
		reading: null,
		notes: [],
		seconds: ({ count }) => Float64Array.from({ length: count }, () => row++ / rate),
	};
}
