import { positive, within } from './range.ts';

/** A fuel: share of ethanol by volume, kg air per kg fuel that just burns it, density in kg/m3, lower heating value in J/kg, kinematic viscosity in m2/s. */
export interface Fuel {
	readonly ethanol: number;
	readonly stoichiometricRatio: number;
	readonly density: number;
	readonly heatingValue: number;
	readonly viscosity: number;
}

/**
 * The three pump fuels, near 15-20 degC.
 *
 * Source: US DOE Alternative Fuels Data Center, Properties of Fuels; the blends (10 and 85 % ethanol by volume, ethanol
 * 789 kg/m3, 9.0, 26.95 MJ/kg) by mass. Viscosity: gasoline 0.5 to 0.6 mm2/s, ethanol 1.5 (same table); blends by the
 * logarithm over volume, an estimate (E85 is quoted as 1.3). A change of 10 % in viscosity moves a line's loss by 2 %.
 */
export const fuels = {
	petrol: { ethanol: 0, stoichiometricRatio: 14.7, density: 745, heatingValue: 43.44e6, viscosity: 0.55e-6 },
	'petrol-e10': { ethanol: 0.1, stoichiometricRatio: 14.1, density: 749.4, heatingValue: 41.7e6, viscosity: 0.61e-6 },
	e85: { ethanol: 0.85, stoichiometricRatio: 9.81, density: 782.4, heatingValue: 29.3e6, viscosity: 1.29e-6 },
} as const satisfies Record<string, Fuel>;

/** Fuel flow, kg/s, that goes with an air flow in kg/s at a lambda. Errors: OutOfRange. Definition of lambda. */
export function fuelFlow(airFlow: number, lambda: number, stoichiometricRatio: number): number {
	positive('air flow', airFlow);
	positive('lambda', lambda);
	positive('stoichiometric ratio', stoichiometricRatio);
	return airFlow / (lambda * stoichiometricRatio);
}

/** Pure ethanol, as in the blends of `fuels`. */
export const pureEthanol: Fuel = {
	ethanol: 1,
	stoichiometricRatio: 9,
	density: 789,
	heatingValue: 26.95e6,
	viscosity: 1.5e-6,
};

/**
 * A blend of gasoline without ethanol and ethanol, by the share of ethanol by volume, 0 to 1. Volumes add up to 0.3 %.
 *
 * Errors: OutOfRange. Source: as `fuels`: density by volume, ratio and heating value by mass, viscosity by its logarithm.
 */
export function blendOf(ethanol: number): Fuel {
	within('ethanol share', ethanol, 0, 1);
	const { petrol } = fuels;
	const byVolume = (a: number, b: number) => a * (1 - ethanol) + b * ethanol;
	const density = byVolume(petrol.density, pureEthanol.density);
	const mass = (pureEthanol.density * ethanol) / density;
	const byMass = (a: number, b: number) => a * (1 - mass) + b * mass;
	return {
		ethanol,
		stoichiometricRatio: byMass(petrol.stoichiometricRatio, pureEthanol.stoichiometricRatio),
		density,
		heatingValue: byMass(petrol.heatingValue, pureEthanol.heatingValue),
		viscosity: Math.exp(byVolume(Math.log(petrol.viscosity), Math.log(pureEthanol.viscosity))),
	};
}
