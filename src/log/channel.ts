import type { Kind } from '../units/kinds.ts';
import type { ChannelId } from './block.ts';

type Span = readonly [least: number, most: number];

/** How a channel is written that no unit alone describes: lambda as an air-fuel ratio, retard and trims by sign and scale, words. */
export const specials = ['lambda', 'retard', 'trim', 'gear', 'loop'] as const;

/** What must not stand still: while engine speed moves, or through a pull. */
export const movements = ['running', 'pull'] as const;

/** A channel as rules/channels.yaml declares it; numbers in the canonical unit of its kind. */
export interface Channel {
	readonly id: ChannelId;
	readonly title: string;
	readonly kind: Kind;
	readonly special: (typeof specials)[number] | null;
	/** Units that are tried in this order where a header has none. */
	readonly units: readonly string[];
	/** Headers it is known by, the likeliest first. */
	readonly known: readonly string[];
	/** What a reading can ever be. */
	readonly range: Span;
	/** Where the upper readings of a drive lie. */
	readonly high: Span | null;
	/** Where the median of a drive lies. */
	readonly middle: Span | null;
	readonly moves: readonly (typeof movements)[number][];
}

/** The channels that must move: while engine speed does, and through a pull. */
export type Moving = Readonly<Record<(typeof movements)[number], readonly ChannelId[]>>;

/** By movement, the channels that must not stand still in it. */
export function movingIn(channels: readonly Channel[]): Moving {
	const that = (movement: (typeof movements)[number]) =>
		channels.filter(({ moves }) => moves.includes(movement)).map(({ id }) => id);
	return { running: that('running'), pull: that('pull') };
}
