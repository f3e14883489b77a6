import type { Declared } from './declared.ts';
import type { Ticks } from './ticks.ts';

/** What is seen beyond the ticks: where demand is lowest, and how much of it is a pull. */
export interface Foot {
	readonly lowest: number | undefined;
	readonly full: number;
}

/** What holds at a tick, a bit each. */
export const holding = { still: 1, cranked: 2, idling: 4, lifted: 8, cruising: 16, pulling: 32 } as const;

/** What holds at each tick, as bits of `holding`: all of it in one pass, for a long log has many ticks. */
export function holdsAt(ticks: Ticks, foot: Foot, declared: Declared): Uint8Array {
	const { speed, demand, manifold, road } = ticks;
	const { crank, running, idle, overrun, cruise } = declared;
	const hasFoot = foot.lowest !== undefined;
	const off = (foot.lowest ?? Number.NaN) + idle.demand;
	const { full } = foot;
	const all = new Uint8Array(speed.length);
	for (let tick = 0; tick < all.length; tick++) {
		const rpm = speed[tick]!;
		const down = demand[tick]!;
		const pace = road[tick]!;
		const hasPace = !Number.isNaN(pace);
		let now = 0;
		if (rpm < crank.slowest) now |= holding.still;
		if (rpm >= crank.slowest && rpm <= crank.fastest) now |= holding.cranked;
		if (rpm > running.speed) {
			// Without a pedal or throttle an engine that stands and turns slowly has no foot on it.
			const isOff = hasFoot ? down <= off : rpm < overrun.speed && hasPace;
			if (isOff && (!hasPace || pace <= idle.standing)) now |= holding.idling;
			const isMoving = hasPace ? pace >= cruise.moving : rpm > overrun.speed;
			const isOn = !hasFoot || (down > off && down < full);
			if (isMoving && isOn && !Number.isNaN(manifold[tick]!)) now |= holding.cruising;
			if (down >= full || isDip(demand, tick, full)) now |= holding.pulling;
		}
		if (hasFoot && rpm > overrun.speed && down <= off) now |= holding.lifted;
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
export function stretches({ time, unbroken }: Ticks, holds: Uint8Array, bit: number): Stretch[] {
	const found: Stretch[] = [];
	let first = -1;
	for (let tick = 0; tick < time.length; tick++) {
		const goesOn = (holds[tick]! & bit) !== 0;
		if (first >= 0 && (!goesOn || unbroken[tick] === 0)) {
			found.push({ first, last: tick - 1 });
			first = -1;
		}
		if (goesOn && first < 0) first = tick;
	}
	if (first >= 0) found.push({ first, last: time.length - 1 });
	return found;
}
