import { positive, within } from './range.ts';
import { sweptVolume } from './slider-crank.ts';

/** Swept volume of all cylinders, m3: bore and stroke in m. Errors: OutOfRange. Geometry. */
export function displacement(cylinders: number, bore: number, stroke: number): number {
	positive('cylinders', cylinders);
	return cylinders * sweptVolume(bore, stroke);
}

/** What a four-stroke breathes with: volumetric efficiency (1), density in the manifold (kg/m3), displacement (m3), rpm. */
export interface Breathing {
	readonly volumetricEfficiency: number;
	readonly density: number;
	readonly displacement: number;
	readonly rpm: number;
}

/** Air flow of a four-stroke engine, kg/s. Errors: OutOfRange. Source: Heywood, ICE Fundamentals, ch. 2 (speed-density). */
export function airFlow({ volumetricEfficiency, density, displacement, rpm }: Breathing): number {
	within('volumetric efficiency', volumetricEfficiency, 0, 2);
	positive('density', density);
	positive('displacement', displacement);
	positive('rpm', rpm);
	return (volumetricEfficiency * density * displacement * rpm) / 120;
}

/**
 * Idle air, kg/s per m3 of displacement: usual 3.9 kg/h a liter at 750 rpm, spread 1.2, warm and without load.
 *
 * Estimate, common practice: a trade rule of about 1 g/s a liter within a fifth, and a measured 2.07 g/s on 1.8 liters.
 */
export const idleAir = { usual: 3.9 / 3600 / 1e-3, spread: 1.2 / 3600 / 1e-3 } as const;

/** Mean piston speed, m/s: stroke in m, rpm. Errors: OutOfRange. Definition. */
export function meanPistonSpeed(stroke: number, rpm: number): number {
	positive('stroke', stroke);
	positive('rpm', rpm);
	return (2 * stroke * rpm) / 60;
}

/**
 * Share of the fuel energy which the air could burn at stoichiometric that becomes work at the crank.
 *
 * Estimate, common practice, from memory; spread -5/+20 %. It is 304 g/kWh at lambda 0.87 unboosted and 365 g/kWh at
 * lambda 0.80 boosted, on gasoline. Lambda itself does not enter: what is over-rich has no air to burn in.
 */
export const usualAirEfficiency = { unboosted: 0.3133, boosted: 0.2838 } as const;

/** What turns an air flow (kg/s) into power: the fuel's stoichiometric ratio and heating value (J/kg), the air efficiency. */
export interface Burning {
	readonly airFlow: number;
	readonly stoichiometricRatio: number;
	readonly heatingValue: number;
	readonly airEfficiency: number;
}

/** Power at the crank, W, from the air that goes in. Errors: OutOfRange. Estimate: only as good as the air efficiency. */
export function powerFromAir({ airFlow, stoichiometricRatio, heatingValue, airEfficiency }: Burning): number {
	positive('air flow', airFlow);
	positive('stoichiometric ratio', stoichiometricRatio);
	positive('heating value', heatingValue);
	within('air efficiency', airEfficiency, 0, 1);
	return (airFlow / stoichiometricRatio) * heatingValue * airEfficiency;
}

/** Torque, N m, of a power in W at rpm. Errors: OutOfRange. Definition. */
export function torque(power: number, rpm: number): number {
	positive('power', power);
	positive('rpm', rpm);
	return (60 * power) / (2 * Math.PI * rpm);
}

/** Brake mean effective pressure of a four-stroke, Pa: power in W, displacement in m3, rpm. Errors: OutOfRange. Definition. */
export function meanEffectivePressure(power: number, displacement: number, rpm: number): number {
	positive('power', power);
	positive('displacement', displacement);
	positive('rpm', rpm);
	return (120 * power) / (displacement * rpm);
}
