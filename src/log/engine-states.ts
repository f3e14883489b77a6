import type { Declared } from './declared.ts';
import type { Ticks } from './ticks.ts';

/** Demand, 1: its lowest in the log, undefined where manifold pressure stands in for it, and that from which it is a pull. */
export interface DemandThresholds {
	readonly lowest: number | undefined;
	readonly full: number;
}

/** States of the engine at a tick, a bit each. */
export const engineState = { still: 1, cranked: 2, idling: 4, lifted: 8, cruising: 16, pulling: 32 } as const;

/** The states at each tick, as bits of `engineState`: all of them in one pass, for a long log has many ticks. */
export function statesAt(ticks: Ticks, thresholds: DemandThresholds, declared: Declared): Uint8Array {
	const { speed, demand, manifold, road } = ticks;
	const { crank, running, idle, overrun, cruise } = declared;
	const hasFoot = thresholds.lowest !== undefined;
	const off = (thresholds.lowest ?? Number.NaN) + idle.demand;
	const { full } = thresholds;
	const all = new Uint8Array(speed.length);
	for (let tick = 0; tick < all.length; tick++) {
		const rpm = speed[tick]!;
		const pressed = demand[tick]!;
		const roadSpeed = road[tick]!;
		const hasRoadSpeed = !Number.isNaN(roadSpeed);
		let now = 0;
		if (rpm < crank.slowest) now |= engineState.still;
		if (rpm >= crank.slowest && rpm <= crank.fastest) now |= engineState.cranked;
		if (rpm > running.speed) {
			// Without a pedal or throttle an engine that stands and turns slowly has no foot on it.
			const isOff = hasFoot ? pressed <= off : rpm < overrun.speed && hasRoadSpeed;
			if (isOff && (!hasRoadSpeed || roadSpeed <= idle.standing)) now |= engineState.idling;
			const isMoving = hasRoadSpeed ? roadSpeed >= cruise.moving : rpm > overrun.speed;
			const isOn = !hasFoot || (pressed > off && pressed < full);
			if (isMoving && isOn && !Number.isNaN(manifold[tick]!)) now |= engineState.cruising;
			if (pressed >= full || isDip(demand, tick, full)) now |= engineState.pulling;
		}
		if (hasFoot && rpm > overrun.speed && pressed <= off) now |= engineState.lifted;
		all[tick] = now;
	}
	return all;
}

/** One reading under it between two over it: a reading decides nothing. */
const isDip = (demand: Float64Array, tick: number, full: number): boolean =>
	tick > 0 && tick + 1 < demand.length && demand[tick - 1]! >= full && demand[tick + 1]! >= full;

/** A stretch of ticks, both ends included. */
export interface Stretch {
	readonly first: number;
	readonly last: number;
}

/** The longest stretches of ticks at which a bit is set, without a break in time. */
export function stretches({ time, unbroken }: Ticks, states: Uint8Array, bit: number): Stretch[] {
	const found: Stretch[] = [];
	let first = -1;
	for (let tick = 0; tick < time.length; tick++) {
		const goesOn = (states[tick]! & bit) !== 0;
		if (first >= 0 && (!goesOn || unbroken[tick] === 0)) {
			found.push({ first, last: tick - 1 });
			first = -1;
		}
		if (goesOn && first < 0) first = tick;
	}
	if (first >= 0) found.push({ first, last: time.length - 1 });
	return found;
}
