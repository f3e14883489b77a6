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

/** Channels by the keys of the headers that they are known by, each with its place in the list. */
export type HeaderIndex = ReadonlyMap<string, { readonly channel: Channel; readonly rank: number }>;

/** The index of some channels. */
export function headerIndex(channels: readonly Channel[]): HeaderIndex {
	return new Map(
		channels.flatMap(channel => channel.known.map((name, rank) => [headerKey(name), { channel, rank }] as const)),
	);
}
