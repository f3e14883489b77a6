import { positive, within } from './range.ts';

/** Exhaust gas on its way to the turbine: ratio of specific heats, gas constant and specific heat in J/kgK. Common values. */
export const exhaustGas = { gamma: 1.33, gasConstant: 287, heat: 1150 } as const;

/** kg of exhaust for each kg of air: fuel adds 7 %. Common value, near lambda 1 on gasoline. */
export const exhaustPerAir = 1.07;

/**
 * Flow through a sharp hole, kg/s: area in m2, pressures absolute in Pa on either side, temperature before it in K.
 *
 * Choked once the pressures part more than ((gamma + 1) / 2)^(gamma / (gamma - 1)). Errors: OutOfRange, also for a pressure
 * behind that is not under the one before. Source: compressible flow through an orifice, Heywood, appendix C.
 */
export function orificeFlow(
	area: number,
	before: number,
	behind: number,
	temperature: number,
	{ gamma, gasConstant }: { readonly gamma: number; readonly gasConstant: number } = exhaustGas,
	discharge = 0.7,
): number {
	positive('area', area);
	positive('pressure before', before);
	positive('temperature', temperature);
	within('pressure behind', behind, 0, before);
	const choked = (2 / (gamma + 1)) ** (gamma / (gamma - 1));
	const ratio = Math.max(behind / before, choked);
	const term = (2 / (gamma - 1)) * (ratio ** (2 / gamma) - ratio ** ((gamma + 1) / gamma));
	return discharge * area * before * Math.sqrt((gamma / (gasConstant * temperature)) * term);
}

/** What a turbine works between: pressures absolute in Pa, temperature in K, efficiency 0 to 1. */
export interface Turbine {
	readonly before: number;
	readonly behind: number;
	readonly temperature: number;
	readonly efficiency: number;
}

/**
 * Share of the exhaust that a turbine does not need, 0 or more: what the wastegate has to let past.
 *
 * The turbine's work on the rest is the compressor's on the air: `airWarming` in K across the compressor. Fuel adds 7 %
 * to the mass. Errors: OutOfRange. Source: power balance of a turbocharger, Heywood, section 6.8; bearings loss left out.
 */
export function bypassShare(airWarming: number, { before, behind, temperature, efficiency }: Turbine): number {
	positive('warming across the compressor', airWarming);
	positive('temperature', temperature);
	positive('turbine efficiency', efficiency);
	positive('pressure behind', behind);
	within('pressure behind', behind, 0, before);
	const { gamma, heat } = exhaustGas;
	const work = heat * temperature * efficiency * (1 - (behind / before) ** ((gamma - 1) / gamma));
	// Pressures alike do no work: minus infinity, and so 0.
	return Math.max(0, 1 - (1005 * airWarming) / (exhaustPerAir * work));
}
