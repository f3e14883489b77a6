import type { Declared } from './declared.ts';
import type { DemandTracker } from './demand.ts';
import { firstFrom, type Readings } from './series.ts';

/** What the engine and the car were at each new reading of engine speed. Arrays of one length; NaN where not known. */
export interface Ticks {
	/** s since the first row. */
	readonly time: Float64Array;
	/** rpm */
	readonly speed: Float64Array;
	/** 1; of ambient pressure where manifold pressure stands in. */
	readonly demand: Float64Array;
	/** Pa abs */
	readonly manifold: Float64Array;
	/** m/s */
	readonly road: Float64Array;
	readonly gear: Float64Array;
	/** Whether time went on without a break since the tick before. */
	readonly unbroken: Uint8Array;
}

/** Reads channels of a log; manifold pressure and boost are made from each other. */
export interface Channels {
	of(id: string): Readings;
}

/** Demand, pressure and road speed at each reading of engine speed; NaN where none was read in the five seconds before. */
export function ticksOf(
	{ of }: Channels,
	demand: DemandTracker,
	ambient: number | undefined,
	breaks: readonly number[],
	{ demand: rules }: Declared,
): Ticks {
	const { time, value: speed } = of('engine_speed');
	const { source } = demand;
	const manifold = heldAtEach(of('manifold_pressure'), time);
	const foot =
		source === 'manifold'
			? manifold.map((pressure, index) => standIn(pressure / (ambient ?? Number.NaN), speed, index, rules.of_ambient))
			: heldAtEach(of(source), time);
	return {
		time,
		speed,
		demand: foot,
		manifold,
		road: heldAtEach(of('road_speed'), time),
		gear: heldAtEach(of('gear'), time),
		unbroken: unbrokenAt(time, breaks),
	};
}

/** Manifold pressure over ambient; it stands for a foot that is down only while engine speed does not fall. */
function standIn(share: number, speed: Float64Array, index: number, full: number): number {
	const falling = index > 0 && speed[index]! < speed[index - 1]! - 20;
	return falling ? Math.min(share, 0.99 * full) : share;
}

/** The reading that stands at each of some rising times, none older than five seconds; not to be written to. */
export function heldAtEach({ time, value }: Readings, at: Float64Array, stale = 5): Float64Array {
	const first = at.length === 0 ? 0 : firstFrom(time, at[0]!);
	if (isAsRead(time, first, at)) return value.subarray(first, first + at.length);
	const held = new Float64Array(at.length).fill(Number.NaN);
	if (time.length === 0) return held;
	let index = at.length === 0 ? -1 : firstFrom(time, at[0]! + 1e-9) - 1;
	for (let tick = 0; tick < at.length; tick++) {
		while (index + 1 < time.length && time[index + 1]! <= at[tick]! + 1e-9) index++;
		if (index >= 0 && at[tick]! - time[index]! <= stale) held[tick] = value[index]!;
	}
	return held;
}

/** Whether from a place on there is one reading at each time and no other: in most logs a row has a reading of every channel. */
function isAsRead(time: Float64Array, first: number, at: Float64Array): boolean {
	const last = at.length - 1;
	if (time.length - first <= last || last < 0) return last < 0;
	for (let index = 0; index < last; index++)
		if (time[first + index] !== at[index] || at[index + 1]! <= at[index]! + 1e-9) return false;
	return time[first + last] === at[last] && !(time[first + last + 1]! <= at[last]! + 1e-9);
}

function unbrokenAt(time: Float64Array, breaks: readonly number[]): Uint8Array {
	const unbroken = new Uint8Array(time.length).fill(1);
	for (const at of breaks) {
		const tick = firstFrom(time, at);
		if (tick < time.length) unbroken[tick] = 0;
	}
	return unbroken;
}
