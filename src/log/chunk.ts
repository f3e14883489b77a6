import type { Car } from './car.ts';
import type { Moving } from './channel.ts';
import type { Declared } from './declared.ts';
import type { DemandSource } from './demand.ts';
import type { Episode, EpisodeKind } from './episodes.ts';
import type { Interval, PullView } from './pull.ts';
import type { PulseForm } from './pulse-form.ts';
import { noReadings, type Readings, within } from './series.ts';
import type { ClockJump } from './store.ts';
import type { Channels, Ticks } from './ticks.ts';
import type { Warmth } from './warmth.ts';

/** A part of a log that is judged at once: its readings, and the episodes that ended in it. */
export interface Chunk extends Channels {
	/** New in this chunk: s since the first row, `from` left out where it is not the first. */
	readonly span: Interval;
	readonly ticks: Ticks;
	readonly episodes: readonly Episode[];
	readonly pulls: readonly PullView[];
	/** All of the log so far. */
	readonly jumps: readonly ClockJump[];
	readonly demand: DemandSource;
	/** Channels that the table has. */
	readonly logged: ReadonlySet<string>;
	/** Channels of which values lay outside of what they can ever be. */
	readonly impossible: readonly string[];
	/** Channels that must move. */
	readonly moving: Moving;
	readonly ambient: number | undefined;
	readonly pulse: PulseForm;
	readonly warmth: Warmth;
	readonly car: Car;
	readonly declared: Declared;
}

/** The readings of a channel in every episode of a kind, one list each. */
export function during({ episodes, of }: Chunk, kind: EpisodeKind, channel: string, warm = false): Readings[] {
	return episodes
		.filter(episode => episode.kind === kind && (!warm || episode.warm))
		.map(({ from, to }) => within(of(channel), from, to));
}

/** What is new of a channel in this chunk. */
export const newIn = ({ of, span: [from, to] }: Chunk, channel: string): Readings =>
	within(of(channel), from + 2e-9, to);

/** Works something out of a chunk once, however many quantities look at it. */
export function oncePerChunk<T>(make: (chunk: Chunk) => T): (chunk: Chunk) => T {
	const made = new WeakMap<Chunk, { readonly of: T }>();
	return chunk => {
		let found = made.get(chunk);
		if (!found) made.set(chunk, (found = { of: make(chunk) }));
		return found.of;
	};
}

/** Keeps something through a log once, however many quantities are read off it: each part is taken once. */
export function oncePerLog<T extends { take(chunk: Chunk): void }>(make: () => T): (chunk: Chunk) => T {
	const made = new WeakMap<object, { readonly kept: T; last: Chunk | null }>();
	return chunk => {
		// There is one of them a log.
		let found = made.get(chunk.warmth);
		if (!found) made.set(chunk.warmth, (found = { kept: make(), last: null }));
		if (found.last !== chunk) {
			found.last = chunk;
			found.kept.take(chunk);
		}
		return found.kept;
	};
}

/** Several stretches of readings as one, one after the other. */
export function concatenated(parts: readonly Readings[]): Readings {
	if (parts.length === 0) return noReadings;
	if (parts.length === 1) return parts[0]!;
	const length = parts.reduce((sum, { time }) => sum + time.length, 0);
	const all = { time: new Float64Array(length), value: new Float64Array(length) };
	let at = 0;
	for (const { time, value } of parts) {
		all.time.set(time, at);
		all.value.set(value, at);
		at += time.length;
	}
	return all;
}
