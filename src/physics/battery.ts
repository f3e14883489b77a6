import { makeCurve } from './interpolate.ts';
import { positive, within } from './range.ts';

/**
 * Rested volts of a 12 V flooded battery against state of charge. Source: the usual table of the trade, from memory, 27 degC,
 * rested 6 h. Published tables differ by up to 0.3 V at the flat end and 0.1 V above, which is 15 points of charge.
 */
const restedVolts = makeCurve([
	[11.89, 0],
	[12.06, 0.25],
	[12.24, 0.5],
	[12.45, 0.75],
	[12.65, 1],
]);

/** State of charge, 0 to 1, from volts after 6 h of rest (0 to 16 V); held at 0 and 1 beyond the table. Errors: OutOfRange. Estimate. */
export function stateOfCharge(volts: number): number {
	within('battery volts', volts, 0, 16);
	return restedVolts.at(volts);
}

/**
 * Days until a parked car will no longer start: battery in C (A s), key-off draw in A, usable share (usual half; above 0 to 1).
 *
 * Errors: OutOfRange, also for no draw at all. Arithmetic; the usable half is common practice.
 */
export function daysToFlat(charge: number, draw: number, usable = 0.5): number {
	positive('battery charge', charge);
	positive('key-off draw', draw);
	positive('usable share', usable);
	within('usable share', usable, 0, 1);
	return (charge * usable) / draw / 86400;
}
