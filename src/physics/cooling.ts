import { positive, within } from './range.ts';

/**
 * Share of the fuel's energy that goes into the coolant of a petrol engine at full power: usual 22 %, 17 to 26.
 *
 * Estimate. Source: Heywood, Internal Combustion Engine Fundamentals, Table 12.1 (energy balance), from memory.
 */
export const coolantShare = { usual: 0.22, low: 0.17, high: 0.26 } as const;

/** Heat that the radiator must shed, W: fuel flow in kg/s, heating value in J/kg, share 0 to 1. Errors: OutOfRange. Estimate. */
export function heatToCoolant(fuelFlow: number, heatingValue: number, share: number = coolantShare.usual): number {
	positive('fuel flow', fuelFlow);
	positive('heating value', heatingValue);
	within('coolant share', share, 0, 1);
	return fuelFlow * heatingValue * share;
}
