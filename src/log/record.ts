import type { Bytes } from '../table/bytes.ts';
import type { Column } from '../table/layout.ts';
import { wide } from '../table/long.ts';
import { openTable, type Table } from '../table/table.ts';
import type { Block, Recording, Totals } from './block.ts';
import type { Taken } from './candidate.ts';
import type { Channel } from './channel.ts';
import { type Clock, clockOf } from './clock.ts';
import { mappingsOfEarlierLog, noChoices, type RecognitionChoices } from './column-mapping.ts';
import { recognize } from './recognize.ts';
import { isUnit, scaled } from './scale.ts';
import { wordReaders } from './word-cells.ts';

/** Rows at the beginning by which columns are recognized. */
const recognitionRows = 4000;

/**
 * Opens a log: reads its beginning, says which column is which channel, and hands over its rows.
 *
 * @throws BadTable when it is no table, has no time, or a choice does not fit it
 */
export async function openRecording(
	bytes: Bytes,
	channels: readonly Channel[],
	choices: RecognitionChoices = noChoices,
): Promise<Recording & { readonly read: () => number }> {
	const table = wide(await openTable(bytes, isUnit));
	const { columns, decimal } = table.layout;
	const first = [...table.beginning(1, recognitionRows)];
	const step = table.long ? 1 : Math.max(1, Math.floor(table.linesAhead / recognitionRows));
	const beginning = [...table.beginning(step)];
	const sign = decimal ?? '.';
	const known = channels.find(({ id }) => id === 'time')?.known ?? [];
	const mappings = [...choices.mappings, ...mappingsOfEarlierLog(choices, headersOf(columns))];
	const mapping = mappings.find(({ channel }) => channel === 'time');
	const clock = clockOf(columns, first, sign, known, mapping);
	const { column } = clock;
	const others = columns.map((one, at) => (at === column ? { ...one, name: '' } : one));
	const found = recognize(others, beginning, sign, channels, choices);
	const totals: Totals = { rows: 0, unread: 0, faults: table.counts.faults, impossible: new Map() };
	for (const id of found.impossible) totals.impossible.set(id, 0);
	const time = timeChannel(column === null ? '#' : columns[column]!.header, clock, mapping !== undefined);
	return {
		channels: [time, ...found.taken.map(({ channel, header, unit, by }) => ({ channel, header, unit, by }))],
		columns: columns.map(({ header }, at) => ({ header, first: firstCells(first, at) })),
		unused: found.unused.filter(header => column === null || header !== columns[column]!.header),
		notes: [...clock.notes, ...found.notes],
		blocks: blocksOf(table, clock, found.taken, totals),
		totals,
		read: table.read,
	};
}

const timeChannel = (header: string, { unit }: Clock, isMapped: boolean) =>
	({ channel: 'time', header, unit, by: isMapped ? 'given' : 'header' }) as const;

/** The first cells of a column that are not empty. */
function firstCells(rows: readonly (readonly string[])[], at: number): string[] {
	const some: string[] = [];
	for (const row of rows) {
		const cell = row[at]?.trim();
		if (cell && some.push(cell) === 3) break;
	}
	return some;
}

const headersOf = (columns: readonly Column[]): string[] => columns.map(({ header }) => header);

async function* blocksOf(table: Table, clock: Clock, taken: readonly Taken[], totals: Totals): AsyncGenerator<Block> {
	const readings = table.layout.columns.map((_, at) => {
		if (at === clock.column) return clock.reading;
		const special = taken.find(({ column }) => column === at)?.declared.special;
		return taken.some(({ column }) => column === at) ? (wordReaders[special ?? ''] ?? 'number') : null;
	});
	for await (const rows of table.rows(readings)) {
		const time = clock.seconds(rows);
		const channels = new Map(taken.map(one => [one.channel, inUnits(rows.columns[one.column]!, one, totals)] as const));
		totals.rows = table.counts.rows;
		totals.unread = table.counts.unread;
		yield { time, channels };
	}
	totals.rows = table.counts.rows;
	totals.unread = table.counts.unread;
}

/** The cells of a column as readings in the canonical unit; what can never be is none. */
function inUnits(cells: Float64Array, { channel, scale, declared }: Taken, totals: Totals): Float64Array {
	const [least, most] = declared.range;
	let impossible = 0;
	for (let row = 0; row < cells.length; row++) {
		const value = scaled(scale, cells[row]!);
		if (value >= least && value <= most) cells[row] = value;
		else {
			if (!Number.isNaN(value)) impossible++;
			cells[row] = Number.NaN;
		}
	}
	if (impossible > 0) totals.impossible.set(channel, (totals.impossible.get(channel) ?? 0) + impossible);
	return cells;
}
