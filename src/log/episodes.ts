import type { Declared } from './declared.ts';
import { type Stretch, stretches, type Ticks } from './ticks.ts';

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

/** What is seen beyond the ticks: where demand is lowest, and how much of it is a pull. */
export interface Foot {
	readonly lowest: number | undefined;
	readonly full: number;
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
export function keyOns(ticks: Ticks, { crank }: Declared): Episode[] {
	return stretches(ticks, tick => ticks.speed[tick]! < crank.slowest)
		.filter(({ first, last }) => last > first)
		.map(({ first, last }) => made('key-on', ticks.time[first]!, ticks.time[last]!));
}

/** The starter turns the engine, and it runs after. */
export function cranks(ticks: Ticks, { crank, running }: Declared): Episode[] {
	const { speed, time } = ticks;
	return stretches(ticks, tick => speed[tick]! >= crank.slowest && speed[tick]! <= crank.fastest)
		.filter(({ last }) => last + 1 < time.length && speed[last + 1]! > running.speed)
		.map(({ first, last }) => made('crank', time[first]!, time[last]!));
}

/** Standing, foot off, running: the first and last seconds left out. */
export function idles(ticks: Ticks, foot: Foot, { idle, running, overrun }: Declared): Episode[] {
	const { speed, demand, road, time } = ticks;
	const footOff = (tick: number) =>
		// Without a pedal or throttle an engine that stands and turns slowly has no foot on it.
		foot.lowest === undefined
			? speed[tick]! < overrun.speed && !Number.isNaN(road[tick]!)
			: demand[tick]! <= foot.lowest + idle.demand;
	const standing = (tick: number) => Number.isNaN(road[tick]!) || road[tick]! <= idle.standing;
	return stretches(ticks, tick => speed[tick]! > running.speed && footOff(tick) && standing(tick))
		.map(({ first, last }) => made('idle', time[first]! + idle.before, time[last]! - idle.after))
		.filter(({ from, to }) => to - from >= idle.time);
}

/** Foot off at speed. */
export function overruns(ticks: Ticks, { lowest }: Foot, { idle, overrun }: Declared): Episode[] {
	if (lowest === undefined) return [];
	const { speed, demand, time } = ticks;
	return stretches(ticks, tick => speed[tick]! > overrun.speed && demand[tick]! <= lowest + idle.demand)
		.map(({ first, last }) => made('overrun', time[first]!, time[last]!))
		.filter(({ from, to }) => to - from >= overrun.time);
}

/** Engine speed and manifold pressure steady on the road, foot on. */
export function cruises(ticks: Ticks, { lowest, full }: Foot, declared: Declared): Episode[] {
	const { speed, demand, road, manifold, time } = ticks;
	const { cruise, idle, overrun, running } = declared;
	const moving = (tick: number) =>
		Number.isNaN(road[tick]!) ? speed[tick]! > overrun.speed : road[tick]! >= cruise.moving;
	const footOn = (tick: number) =>
		lowest === undefined || (demand[tick]! > lowest + idle.demand && demand[tick]! < full);
	const known = (tick: number) => !Number.isNaN(manifold[tick]!);
	const driven = stretches(ticks, tick => speed[tick]! > running.speed && moving(tick) && footOn(tick) && known(tick));
	return driven
		.flatMap(stretch => [...steady(stretch, [speed, manifold], cruise)])
		.map(({ first, last }) => made('cruise', time[first]!, time[last]!))
		.filter(({ from, to }) => to - from >= cruise.time);
}

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
