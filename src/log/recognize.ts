import { readCell } from '../table/cell.ts';
import type { Column } from '../table/layout.ts';
import { BadTable } from '../table/problem.ts';
import type { By, Recognised } from './block.ts';
import type { Channel } from './channel.ts';
import { fitUnwritten, fitWritten, type Misfit, type Reading } from './fit.ts';
import { type HeaderIndex, headerIndex, headerKey } from './header.ts';
import { type ColumnChoices, type GivenChannel, keptOf } from './options.ts';
import { referenceOf } from './reference.ts';
import { type Scale, scaleOf, unitAs } from './scale.ts';
import { Values } from './values.ts';
import { wordReaders } from './words.ts';

/** A column that was taken: how its cells become readings. */
export interface Taken extends Recognised {
	/** Its place in the table, from 0. */
	readonly column: number;
	readonly declared: Channel;
	readonly scale: Scale;
}

export interface Recognition {
	readonly taken: readonly Taken[];
	readonly unused: readonly string[];
	readonly notes: readonly string[];
	/** Channels whose column has values that the channel can never have. */
	readonly impossible: readonly string[];
}

interface Candidate {
	readonly column: number;
	readonly channel: Channel;
	readonly rank: number;
	readonly by: By;
	readonly reading: Reading;
}

/**
 * Says which column is which channel. Header, unit and values must all agree; of two candidates the one in the header's likelier
 * words is taken, and neither where they are alike. What the person gives comes first.
 *
 * @param beginning rows of cells from the beginning of the log
 * @throws BadTable when what was given names no column, no channel or no unit
 */
export function recognize(
	columns: readonly Column[],
	beginning: readonly (readonly string[])[],
	decimal: '.' | ',',
	channels: readonly Channel[],
	choices: ColumnChoices,
): Recognition {
	return new Recognizer(columns, beginning, decimal, channels, choices).recognize();
}

class Recognizer {
	private readonly notes: string[] = [];
	private readonly impossible: string[] = [];
	private readonly values = new Map<string, Values>();
	private readonly index: HeaderIndex;
	private readonly columns: readonly Column[];
	private readonly beginning: readonly (readonly string[])[];
	private readonly decimal: '.' | ',';
	private readonly channels: readonly Channel[];
	private readonly choices: ColumnChoices;

	constructor(
		columns: readonly Column[],
		beginning: readonly (readonly string[])[],
		decimal: '.' | ',',
		channels: readonly Channel[],
		choices: ColumnChoices,
	) {
		this.columns = columns;
		this.beginning = beginning;
		this.decimal = decimal;
		// Time is no column of readings: `clock` finds it.
		this.channels = channels.filter(({ id }) => id !== 'time');
		this.choices = choices;
		this.index = headerIndex(this.channels);
	}

	recognize(): Recognition {
		const given = this.choices.given.flatMap(one => this.given(one, 'given'));
		const headers = this.columns.map(({ header }) => header);
		const kept = keptOf(this.choices, headers).flatMap(one => this.kept(one));
		const said = [...given, ...kept.filter(one => !given.some(other => other.column === one.column))];
		const left = new Set(this.choices.not.map(header => this.place(header)));
		const known = this.columns.flatMap((_, column) =>
			left.has(column) || said.some(one => one.column === column) ? [] : this.known(column),
		);
		const taken = this.oneEach([...said, ...known]).sort((a, b) => a.column - b.column);
		return {
			taken,
			unused: this.columns.filter((_, at) => !taken.some(({ column }) => column === at)).map(({ header }) => header),
			notes: this.notes,
			impossible: this.impossible.filter(id => !taken.some(({ channel }) => channel === id)),
		};
	}

	/** The place of the column that a person names. */
	private place(header: string): number {
		const like = (text: string) => text.trim().toLowerCase() === header.trim().toLowerCase();
		const place = this.columns.findIndex(column => like(column.header));
		const named = place >= 0 ? place : this.columns.findIndex(({ name }) => like(name));
		if (named >= 0) return named;
		const headers = this.columns.map(column => column.header).join(', ');
		throw new BadTable(`no column ${JSON.stringify(header)}`, headers);
	}

	private given({ channel: id, header, unit }: GivenChannel, by: By): Candidate[] {
		if (id === 'time') return [];
		const channel = this.channels.find(channel => channel.id === id);
		if (!channel) throw new BadTable(`the channel ${JSON.stringify(id)}`, this.channels.map(({ id }) => id).join(', '));
		const column = this.place(header);
		const values = this.valuesOf(column, channel);
		const written = unit ?? this.columns[column]!.unit;
		const scale = written === null ? undefined : scaleOf(written, channel);
		if (unit !== null && !scale) {
			throw new BadTable(`the unit ${JSON.stringify(unit)} for ${id}`, channel.units.join(', ') || 'none');
		}
		const reading = scale
			? this.believed(channel, unit, written!, scale, values)
			: fitUnwritten(channel, header, values);
		if ('why' in reading) throw new BadTable(`${header} for ${id}: ${reading.why}`, `${id}=${header}@UNIT`);
		return [{ column, channel, rank: -1, by, reading }];
	}

	/** A unit that the person gives counts whatever the values are; sign and zero of trims and retard still come from them. */
	private believed(
		channel: Channel,
		unit: string | null,
		written: string,
		scale: Scale,
		values: Values,
	): Reading | Misfit {
		const fitted = fitWritten(channel, written, values);
		return unit !== null && 'why' in fitted ? { scale, notes: [] } : fitted;
	}

	/** As an earlier log was read; this one's values may not allow it. */
	private kept(one: GivenChannel): Candidate[] {
		try {
			return this.given(one, 'kept');
		} catch (error) {
			if (!(error instanceof BadTable)) throw error;
			this.notes.push(`${one.header}: it cannot be read as in the earlier log`);
			return [];
		}
	}

	/** What a column's own header makes of it. */
	private known(column: number): Candidate[] {
		const { name, unit, header } = this.columns[column]!;
		const volts = unit !== null && /^m?v(?:olts?)?$/i.test(unit.trim());
		const found = (volts ? this.index.get(`${headerKey(name)}volts`) : undefined) ?? this.index.get(headerKey(name));
		if (!found) return [];
		const { channel, rank } = found;
		const values = this.valuesOf(column, channel);
		if (values.sorted.length === 0) return [];
		const plainUnit = unit === null || /^(?:-|n\/a|none|bool|state|text|on\/off)$/i.test(unit.trim()) ? null : unit;
		const pressure = channel.id === 'boost' || channel.id === 'manifold_pressure';
		const reading = pressure ? this.pressure(column, plainUnit, values) : null;
		if (reading && 'channel' in reading) return [{ column, rank, by: 'header', ...reading }];
		const fitted =
			reading ?? (plainUnit === null ? fitUnwritten(channel, name, values) : fitWritten(channel, plainUnit, values));
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
		values: Values,
	): (Misfit | { channel: Channel; reading: Reading }) | null {
		const { name } = this.columns[column]!;
		const absolute = this.channels.find(({ id }) => id === 'manifold_pressure')!;
		const gauge = this.channels.find(({ id }) => id === 'boost')!;
		const named = this.index.get(headerKey(name))!.channel;
		const first = unit === null ? fitUnwritten(named, name, values) : fitWritten(named, unit, values);
		const loose = unit === null ? first : { scale: scaleOf(unit, named)!, notes: [] as string[] };
		if ('why' in loose || !loose.scale) return 'why' in first ? first : null;
		const speeds = this.columnOf('engine_speed');
		const written = /abs|psia/i.test(unit ?? '')
			? 'absolute'
			: /gauge|psig|barg/i.test(`${unit} ${name}`)
				? 'gauge'
				: null;
		const byWords = named === absolute ? 'absolute' : null;
		const found = written ?? referenceOf(loose.scale, values, speeds) ?? byWords;
		if (found === null) {
			return { why: 'its values do not tell whether it counts from the air outside or from vacuum', impossible: false };
		}
		const channel = found === 'absolute' ? absolute : gauge;
		const unitName = unitAs(found, loose.scale.unit);
		const fitted = fitWritten(channel, unitName, values);
		if ('why' in fitted) return fitted;
		const notes = channel === named ? [] : [`by its values it is ${channel.title}`];
		return { channel, reading: { scale: fitted.scale, notes: [...loose.notes, ...notes] } };
	}

	private columnOf(id: string): Values | null {
		const said = this.choices.given.find(({ channel }) => channel === id);
		const at = said
			? this.place(said.header)
			: this.columns.findIndex(({ name }) => this.index.get(headerKey(name))?.channel.id === id);
		return at < 0 ? null : this.valuesOf(at, this.channels.find(channel => channel.id === id)!);
	}

	private valuesOf(column: number, { special }: Channel): Values {
		const reader = wordReaders[special ?? 'none'];
		const key = `${column} ${reader ? special : ''}`;
		let values = this.values.get(key);
		if (!values) {
			const read = reader ?? ((cell: string) => readCell(cell, this.decimal));
			values = new Values(this.beginning.map(row => read(row[column] ?? '') ?? Number.NaN));
			this.values.set(key, values);
		}
		return values;
	}

	/** Of the candidates of each channel the one that is given, else the one in the likeliest words. */
	private oneEach(candidates: readonly Candidate[]): Taken[] {
		const byChannel = new Map<Channel, Candidate[]>();
		for (const one of candidates) byChannel.set(one.channel, [...(byChannel.get(one.channel) ?? []), one]);
		return [...byChannel].flatMap(([channel, all]): Taken[] => {
			const best = Math.min(...all.map(({ rank }) => rank));
			const [first, second] = all.filter(({ rank }) => rank === best) as [Candidate, Candidate?];
			if (second && first.by === 'header') {
				const headers = [first, second].map(({ column }) => this.columns[column]!.header).join(' and ');
				this.notes.push(
					`${headers} can both be ${channel.title}; neither was taken. To say which: --channel ${channel.id}=HEADER`,
				);
				return [];
			}
			const { column, by, reading } = first;
			const { header } = this.columns[column]!;
			for (const other of all) {
				if (other !== first)
					this.notes.push(`${this.columns[other.column]!.header}: ${header} was taken for ${channel.title}`);
			}
			this.notes.push(...reading.notes.map(note => `${header}: ${note}`));
			return [
				{ channel: channel.id, header, unit: reading.scale.unit, by, column, declared: channel, scale: reading.scale },
			];
		});
	}
}
