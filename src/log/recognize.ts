import type { Column } from '../table/layout.ts';
import { TableBeginning } from './beginning.ts';
import { type Candidate, oneEach, type Taken } from './candidate.ts';
import type { Channel } from './channel.ts';
import { mappingsOfEarlierLog, type RecognitionChoices } from './column-mapping.ts';
import { inferUnit, type Misfit, type Reading, readInUnit } from './column-unit.ts';
import type { ColumnValues } from './column-values.ts';
import { type HeaderIndex, headerIndex, headerKey } from './header.ts';
import { mappedAsEarlier, mappedColumn } from './mapped-columns.ts';
import { referenceOf } from './reference.ts';
import { scaleOf, unitAs } from './scale.ts';

/** Which columns are taken for which channels, and what is left. */
export interface Recognition {
	readonly taken: readonly Taken[];
	readonly unused: readonly string[];
	readonly notes: readonly string[];
	/** Channels whose column has values that the channel can never have. */
	readonly impossible: readonly string[];
}

/**
 * Says which column is which channel. Header, unit and values must all agree; of two candidates the one in the header's likelier
 * words is taken, and neither where they are equally likely. What the person says comes first.
 *
 * @param beginning rows of cells from the beginning of the log
 * @throws BadTable when a choice names no column, no channel or no unit
 */
export function recognize(
	columns: readonly Column[],
	beginning: readonly (readonly string[])[],
	decimal: '.' | ',',
	channels: readonly Channel[],
	choices: RecognitionChoices,
): Recognition {
	return new Recognizer(new TableBeginning(columns, beginning, decimal), channels, choices).recognize();
}

class Recognizer {
	private readonly notes: string[] = [];
	private readonly impossible: string[] = [];
	private readonly index: HeaderIndex;
	private readonly beginning: TableBeginning;
	private readonly channels: readonly Channel[];
	private readonly choices: RecognitionChoices;

	constructor(beginning: TableBeginning, channels: readonly Channel[], choices: RecognitionChoices) {
		this.beginning = beginning;
		// Time is no column of readings: `clock` finds it.
		this.channels = channels.filter(({ id }) => id !== 'time');
		this.choices = choices;
		this.index = headerIndex(this.channels);
	}

	recognize(): Recognition {
		const mapped = this.choices.mappings.flatMap(one => mappedColumn(this.beginning, this.channels, one, 'given'));
		const headers = this.beginning.columns.map(({ header }) => header);
		const earlier = mappingsOfEarlierLog(this.choices, headers).flatMap(one =>
			mappedAsEarlier(this.beginning, this.channels, one, this.notes),
		);
		const chosen = [...mapped, ...earlier.filter(one => !mapped.some(other => other.column === one.column))];
		const ignored = new Set(this.choices.ignored.map(header => this.beginning.place(header)));
		const known = this.beginning.columns.flatMap((_, column) =>
			ignored.has(column) || chosen.some(one => one.column === column) ? [] : this.known(column),
		);
		const taken = oneEach([...chosen, ...known], this.beginning.columns, this.notes).sort(
			(a, b) => a.column - b.column,
		);
		return {
			taken,
			unused: this.beginning.columns
				.filter((_, at) => !taken.some(({ column }) => column === at))
				.map(({ header }) => header),
			notes: this.notes,
			impossible: this.impossible.filter(id => !taken.some(({ channel }) => channel === id)),
		};
	}

	/** The channel that a column's own header names, where its values allow it. */
	private known(column: number): Candidate[] {
		const { name, unit, header } = this.beginning.columns[column]!;
		const volts = unit !== null && /^m?v(?:olts?)?$/i.test(unit.trim());
		const found = (volts ? this.index.get(`${headerKey(name)}volts`) : undefined) ?? this.index.get(headerKey(name));
		if (!found) return [];
		const { channel, rank } = found;
		const values = this.beginning.valuesOf(column, channel);
		if (values.sorted.length === 0) return [];
		const plainUnit = unit === null || /^(?:-|n\/a|none|bool|state|text|on\/off)$/i.test(unit.trim()) ? null : unit;
		const pressure = channel.id === 'boost' || channel.id === 'manifold_pressure';
		const reading = pressure ? this.pressure(column, plainUnit, values) : null;
		if (reading && 'channel' in reading) return [{ column, rank, by: 'header', ...reading }];
		const fitted =
			reading ?? (plainUnit === null ? inferUnit(channel, name, values) : readInUnit(channel, plainUnit, values));
		if ('why' in fitted) {
			this.notes.push(`${header}: ${fitted.why}; it was not taken. To say so: --channel ${channel.id}=${header}@UNIT`);
			if (fitted.impossible) this.impossible.push(channel.id);
			return [];
		}
		return [{ column, channel, rank, by: 'header', reading: fitted }];
	}

	/** Boost or manifold pressure, by where the readings lie with the engine off. */
	private pressure(
		column: number,
		unit: string | null,
		values: ColumnValues,
	): (Misfit | { channel: Channel; reading: Reading }) | null {
		const { name } = this.beginning.columns[column]!;
		const absolute = this.channels.find(({ id }) => id === 'manifold_pressure')!;
		const gauge = this.channels.find(({ id }) => id === 'boost')!;
		const named = this.index.get(headerKey(name))!.channel;
		const first = unit === null ? inferUnit(named, name, values) : readInUnit(named, unit, values);
		const asWritten = unit === null ? first : { scale: scaleOf(unit, named)!, notes: [] as string[] };
		if ('why' in asWritten || !asWritten.scale) return 'why' in first ? first : null;
		const speeds = this.columnOf('engine_speed');
		const written = /abs|psia/i.test(unit ?? '')
			? 'absolute'
			: /gauge|psig|barg/i.test(`${unit} ${name}`)
				? 'gauge'
				: null;
		const byWords = named === absolute ? 'absolute' : null;
		const found = written ?? referenceOf(asWritten.scale, values, speeds) ?? byWords;
		if (found === null) {
			return { why: 'its values do not show whether it counts from the air outside or from vacuum', impossible: false };
		}
		const channel = found === 'absolute' ? absolute : gauge;
		const unitName = unitAs(found, asWritten.scale.unit);
		const fitted = readInUnit(channel, unitName, values);
		if ('why' in fitted) return fitted;
		const notes = channel === named ? [] : [`by its values it is ${channel.title}`];
		return { channel, reading: { scale: fitted.scale, notes: [...asWritten.notes, ...notes] } };
	}

	private columnOf(id: string): ColumnValues | null {
		const mapping = this.choices.mappings.find(({ channel }) => channel === id);
		const at = mapping
			? this.beginning.place(mapping.header)
			: this.beginning.columns.findIndex(({ name }) => this.index.get(headerKey(name))?.channel.id === id);
		return at < 0 ? null : this.beginning.valuesOf(at, this.channels.find(channel => channel.id === id)!);
	}
}
