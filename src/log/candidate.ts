import type { Column } from '../table/layout.ts';
import type { Recognized, RecognizedBy } from './block.ts';
import type { Channel } from './channel.ts';
import type { Reading } from './column-unit.ts';
import type { Scale } from './scale.ts';

/** A column that may be a channel, and how it would be read. */
export interface Candidate {
	/** Its place in the table, from 0. */
	readonly column: number;
	readonly channel: Channel;
	/** The place of its header among those that the channel is known by; -1 where somebody said so. */
	readonly rank: number;
	readonly by: RecognizedBy;
	readonly reading: Reading;
}

/** A column that was taken: how its cells become readings. */
export interface Taken extends Recognized {
	/** Its place in the table, from 0. */
	readonly column: number;
	readonly declared: Channel;
	readonly scale: Scale;
}

/** Of each channel's candidates the one that the person chose, else the likeliest header; what was decided goes into the notes. */
export function oneEach(candidates: readonly Candidate[], columns: readonly Column[], notes: string[]): Taken[] {
	const byChannel = new Map<Channel, Candidate[]>();
	for (const one of candidates) byChannel.set(one.channel, [...(byChannel.get(one.channel) ?? []), one]);
	return [...byChannel].flatMap(([channel, all]): Taken[] => {
		const best = Math.min(...all.map(({ rank }) => rank));
		const [first, second] = all.filter(({ rank }) => rank === best) as [Candidate, Candidate?];
		if (second && first.by === 'header') {
			const headers = [first, second].map(({ column }) => columns[column]!.header).join(' and ');
			notes.push(
				`${headers} can both be ${channel.title}; neither was taken. To say which: --channel ${channel.id}=HEADER`,
			);
			return [];
		}
		const { column, by, reading } = first;
		const { header } = columns[column]!;
		for (const other of all) {
			if (other !== first) notes.push(`${columns[other.column]!.header}: ${header} was taken for ${channel.title}`);
		}
		notes.push(...reading.notes.map(note => `${header}: ${note}`));
		return [
			{ channel: channel.id, header, unit: reading.scale.unit, by, column, declared: channel, scale: reading.scale },
		];
	});
}
