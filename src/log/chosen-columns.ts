import { BadTable } from '../table/problem.ts';
import type { TableBeginning } from './beginning.ts';
import type { By } from './block.ts';
import type { Candidate } from './candidate.ts';
import type { Channel } from './channel.ts';
import { fitUnwritten, fitWritten, type Misfit, type Reading } from './column-unit.ts';
import type { ColumnValues } from './column-values.ts';
import type { GivenChannel } from './options.ts';
import { type Scale, scaleOf } from './scale.ts';

/**
 * A column that somebody says is a channel; none for time, which is found elsewhere.
 *
 * @throws BadTable when it names no column, no channel or no unit
 */
export function asSaid(
	beginning: TableBeginning,
	channels: readonly Channel[],
	{ channel: id, header, unit }: GivenChannel,
	by: By,
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
	const reading = scale ? believed(channel, unit, written!, scale, values) : fitUnwritten(channel, header, values);
	if ('why' in reading) throw new BadTable(`${header} for ${id}: ${reading.why}`, `${id}=${header}@UNIT`);
	return [{ column, channel, rank: -1, by, reading }];
}

/** A unit that the person gives counts whatever the values are; sign and zero of trims and retard still come from them. */
function believed(
	channel: Channel,
	unit: string | null,
	written: string,
	scale: Scale,
	values: ColumnValues,
): Reading | Misfit {
	const fitted = fitWritten(channel, written, values);
	return unit !== null && 'why' in fitted ? { scale, notes: [] } : fitted;
}

/** As an earlier log was read; this one's values may not allow it. */
export function asKept(
	beginning: TableBeginning,
	channels: readonly Channel[],
	one: GivenChannel,
	notes: string[],
): Candidate[] {
	try {
		return asSaid(beginning, channels, one, 'kept');
	} catch (error) {
		if (!(error instanceof BadTable)) throw error;
		notes.push(`${one.header}: it cannot be read as in the earlier log`);
		return [];
	}
}
