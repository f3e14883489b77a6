import { positive, within } from './range.ts';

/**
 * Share of the fuel's energy that goes into the coolant of a gasoline engine at full power: usual 25 %, 17 to 30.
 *
 * Estimate, all from memory: Heywood (Table 12.1) 17 to 26 at maximum power, Stone 20 to 30, Pulkrabek 10 to 30, a further
 * textbook over 25 at high speed and over 35 at low. Where they part, a radiator is better judged on the high side.
 */
export const coolantShare = { usual: 0.25, low: 0.17, high: 0.3 } as const;

/** Heat that the radiator must shed, W: fuel flow in kg/s, heating value in J/kg, share 0 to 1. Errors: OutOfRange. Estimate. */
export function heatToCoolant(fuelFlow: number, heatingValue: number, share: number = coolantShare.usual): number {
	positive('fuel flow', fuelFlow);
	positive('heating value', heatingValue);
	within('coolant share', share, 0, 1);
	return fuelFlow * heatingValue * share;
}
