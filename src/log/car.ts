import type { Outcome } from '../expressions/tree.ts';

/** The answers that only the quantities of a log read. */
export const readByLogs: readonly string[] = ['driveline.vehicle_mass'];

/** The car of the sheet, as the quantities of a log read it. */
export interface Car {
	/** An answer or a quantity, in canonical units; undefined where it is not known, null where it does not apply. */
	value(id: string): Outcome;
	/** A quantity of the model with some others replaced. */
	at(id: string, replaced: Readonly<Record<string, number>>): Outcome;
}

/** A number of the sheet; undefined where there is none. */
export function numberOf(car: Car, id: string): number | undefined {
	const value = car.value(id);
	return typeof value === 'number' ? value : undefined;
}
