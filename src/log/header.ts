import type { Column } from '../table/layout.ts';
import type { Channel } from './channel.ts';

/** A header without what loggers vary: case, spaces, signs, a trailing "sensor" or "value". */
export function headerKey(header: string): string {
	return header
		.normalize('NFKC')
		.toLowerCase()
		.replace(/λ/g, 'lambda')
		.replace(/[^a-z0-9]+/g, '')
		.replace(/(?:sensor|value|signal|pid)$/, '');
}

/** The place of the column that a person names: by its whole header, else by its name without the unit; -1 where none has it. */
export function columnNamed(columns: readonly Column[], header: string): number {
	const wanted = header.trim().toLowerCase();
	const isWanted = (text: string) => text.trim().toLowerCase() === wanted;
	const place = columns.findIndex(column => isWanted(column.header));
	return place >= 0 ? place : columns.findIndex(({ name }) => isWanted(name));
}

/** Channels by the keys of the headers that they are known by, each with its place in the list. */
export type HeaderIndex = ReadonlyMap<string, { readonly channel: Channel; readonly rank: number }>;

/** The index of some channels. */
export function headerIndex(channels: readonly Channel[]): HeaderIndex {
	return new Map(
		channels.flatMap(channel => channel.known.map((name, rank) => [headerKey(name), { channel, rank }] as const)),
	);
}
