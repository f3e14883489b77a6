import { BadTable } from '../table/problem.ts';
import type { TableBeginning } from './beginning.ts';
import type { RecognizedBy } from './block.ts';
import type { Candidate } from './candidate.ts';
import type { Channel } from './channel.ts';
import type { ColumnMapping } from './column-mapping.ts';
import { inferUnit, type Misfit, type Reading, readInUnit } from './column-unit.ts';
import type { ColumnValues } from './column-values.ts';
import { type Scale, scaleOf } from './scale.ts';

/**
 * The column that a mapping makes a channel; none for time, which `clock` finds.
 *
 * @throws BadTable when it names no column, no channel or no unit
 */
export function mappedColumn(
	beginning: TableBeginning,
	channels: readonly Channel[],
	{ channel: id, header, unit }: ColumnMapping,
	by: RecognizedBy,
): Candidate[] {
	if (id === 'time') return [];
	const channel = channels.find(channel => channel.id === id);
	if (!channel) throw new BadTable(`the channel ${JSON.stringify(id)}`, channels.map(({ id }) => id).join(', '));
	const column = beginning.place(header);
	const values = beginning.valuesOf(column, channel);
	const written = unit ?? beginning.columns[column]!.unit;
	const scale = written === null ? undefined : scaleOf(written, channel);
	if (unit !== null && !scale) {
		throw new BadTable(`the unit ${JSON.stringify(unit)} for ${id}`, channel.units.join(', ') || 'none');
	}
	const reading = scale ? readWithUnit(channel, unit, written!, scale, values) : inferUnit(channel, header, values);
	if ('why' in reading) throw new BadTable(`${header} for ${id}: ${reading.why}`, `${id}=${header}@UNIT`);
	return [{ column, channel, rank: -1, by, reading }];
}

/** A unit that the person says counts, even against the values; sign and zero of trims and retard still come from them. */
function readWithUnit(
	channel: Channel,
	unit: string | null,
	written: string,
	scale: Scale,
	values: ColumnValues,
): Reading | Misfit {
	const fitted = readInUnit(channel, written, values);
	return unit !== null && 'why' in fitted ? { scale, notes: [] } : fitted;
}

/** The column as an earlier log was read; none, with a note, where this one's values do not allow it. */
export function mappedAsEarlier(
	beginning: TableBeginning,
	channels: readonly Channel[],
	one: ColumnMapping,
	notes: string[],
): Candidate[] {
	try {
		return mappedColumn(beginning, channels, one, 'kept');
	} catch (error) {
		if (!(error instanceof BadTable)) throw error;
		notes.push(`${one.header}: it cannot be read as in the earlier log`);
		return [];
	}
}
