import type { CarModel } from './car-model.ts';
import { fillingShape } from './terms.ts';

/** Where an engine speed lies from that of best power, as far as filling goes: made once for many points of the unknowns. */
export interface Place {
	/** rpm; `best`: of best power. */
	readonly speed: number;
	readonly best: number;
	/** What each term of shape is multiplied by. */
	readonly powers: readonly number[];
}

/** @param speed rpm; `best`: that of best power */
export function placeOf(speed: number, best: number): Place {
	const x = (speed - best) / (best / 2);
	return { speed, best, powers: Array.from({ length: fillingShape.terms }, (_, term) => x ** (term + 1)) };
}

/**
 * Filling at an engine speed over that at best power: up to the speed of best power by the model's torque, and three free terms
 * of shape around it.
 *
 * @param at a point of all unknowns, in standard deviations; the terms of shape stand from `first` on
 */
export function fillingAt(car: CarModel, { speed, best, powers }: Place, at: ArrayLike<number>, first: number): number {
	const peak = car.of('torquePeak');
	const back = peak < best ? Math.max(-1, Math.min(1, (best - speed) / (best - peak))) : 0;
	let filling = 1 + ((car.of('torqueRise') - 1) / 2) * (Number.isFinite(back) ? back : 0);
	for (let term = 0; term < powers.length; term++)
		filling += fillingShape.deviation * at[first + term]! * powers[term]!;
	return filling;
}
