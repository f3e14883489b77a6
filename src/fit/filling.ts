import type { CarAt } from './car-at.ts';
import { breathing } from './terms.ts';

/**
 * Filling at an engine speed over that at best power: up to the speed of best power by the model's torque, and three free terms
 * of shape around it.
 *
 * @param speed rpm; `best`: that of best power
 * @param at a point of all unknowns, in standard deviations; the terms of shape stand from `first` on
 */
export function fillingAt(car: CarAt, speed: number, best: number, at: ArrayLike<number>, first: number): number {
	const x = (speed - best) / (best / 2);
	const peak = car.of('torquePeak');
	const back = peak < best ? Math.max(-1, Math.min(1, (best - speed) / (best - peak))) : 0;
	let filling = 1 + ((car.of('torqueRise') - 1) / 2) * (Number.isFinite(back) ? back : 0);
	for (let term = 0; term < breathing.terms; term++)
		filling += breathing.deviation * at[first + term]! * x ** (term + 1);
	return filling;
}
