import type { Declared } from './declared.ts';
import type { Stretch } from './engine-states.ts';
import type { Ticks } from './ticks.ts';

export type EpisodeKind = 'key-on' | 'crank' | 'idle' | 'cruise' | 'overrun' | 'pull';

/** Something the engine did for a while. */
export interface Episode {
	readonly kind: EpisodeKind;
	/** s since the first row. */
	readonly from: number;
	readonly to: number;
	/** Pulls only, from 1. */
	readonly number: number | null;
	/** Where the gear is logged. */
	readonly gear: number | null;
	/** By its coolant, when it began. */
	readonly warm: boolean;
}

const made = (kind: EpisodeKind, from: number, to: number): Episode => ({
	kind,
	from,
	to,
	number: null,
	gear: null,
	warm: false,
});

/** The key is on and the engine stands still. */
export const keyOns = ({ time }: Ticks, still: readonly Stretch[]): Episode[] =>
	still.filter(({ first, last }) => last > first).map(({ first, last }) => made('key-on', time[first]!, time[last]!));

/** The starter turns the engine, and it runs after. */
export const cranks = ({ speed, time }: Ticks, cranked: readonly Stretch[], { running }: Declared): Episode[] =>
	cranked
		.filter(({ last }) => last + 1 < time.length && speed[last + 1]! > running.speed)
		.map(({ first, last }) => made('crank', time[first]!, time[last]!));

/** Standing, foot off, running: the first and last seconds left out. */
export const idles = ({ time }: Ticks, idling: readonly Stretch[], { idle }: Declared): Episode[] =>
	idling
		.map(({ first, last }) => made('idle', time[first]! + idle.before, time[last]! - idle.after))
		.filter(({ from, to }) => to - from >= idle.time);

/** Foot off at speed. */
export const overruns = ({ time }: Ticks, lifted: readonly Stretch[], { overrun }: Declared): Episode[] =>
	lifted
		.map(({ first, last }) => made('overrun', time[first]!, time[last]!))
		.filter(({ from, to }) => to - from >= overrun.time);

/** Engine speed and manifold pressure steady on the road, foot on. */
export const cruises = (
	{ speed, manifold, time }: Ticks,
	driven: readonly Stretch[],
	{ cruise }: Declared,
): Episode[] =>
	driven
		.flatMap(stretch => [...steady(stretch, [speed, manifold], cruise)])
		.map(({ first, last }) => made('cruise', time[first]!, time[last]!))
		.filter(({ from, to }) => to - from >= cruise.time);

/** Parts of a stretch, one after the other, in which each array stays inside its band from least to most. */
function* steady(
	{ first, last }: Stretch,
	[speed, manifold]: readonly [Float64Array, Float64Array],
	{ speed: share, pressure }: Declared['cruise'],
): Generator<Stretch> {
	let start = first;
	let [low, high, less, more] = [speed[first]!, speed[first]!, manifold[first]!, manifold[first]!];
	for (let tick = first + 1; tick <= last; tick++) {
		const [turning, pressing] = [speed[tick]!, manifold[tick]!];
		if (turning < low) low = turning;
		if (turning > high) high = turning;
		if (pressing < less) less = pressing;
		if (pressing > more) more = pressing;
		if (high - low <= share * (low + high) * 0.5 && more - less <= pressure) continue;
		yield { first: start, last: tick - 1 };
		start = tick;
		low = high = turning;
		less = more = pressing;
	}
	yield { first: start, last };
}
