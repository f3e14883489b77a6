import { OutOfRange, positive, within } from './range.ts';

/** Ratio of specific heats of air near room temperature. */
const gamma = 1.4;

/** The four pressures that a compressor works between, Pa: manifold and ambient absolute, the two losses as differences. */
export interface CompressorPressures {
	readonly manifold: number;
	readonly coolerLoss: number;
	readonly ambient: number;
	readonly inletLoss: number;
}

/** Pressure out over pressure in. Errors: OutOfRange for a loss under 0, or an inlet loss that eats the ambient. Definition. */
export function pressureRatio({ manifold, coolerLoss, ambient, inletLoss }: CompressorPressures): number {
	positive('manifold pressure', manifold);
	within('intercooler loss', coolerLoss, 0, 1e6);
	within('inlet loss', inletLoss, 0, 1e6);
	if (!(ambient > inletLoss)) throw new OutOfRange('ambient pressure', ambient, `above the inlet loss of ${inletLoss}`);
	return (manifold + coolerLoss) / (ambient - inletLoss);
}

/**
 * Temperature out of a compressor, K: inlet temperature in K, pressure ratio 1 to 20, efficiency above 0 to 1.
 *
 * Errors: OutOfRange. Source: isentropic relation with efficiency, Cengel & Boles, Thermodynamics; gamma held at 1.4.
 */
export function compressorOutletTemperature(inlet: number, ratio: number, efficiency: number): number {
	positive('inlet temperature', inlet);
	within('pressure ratio', ratio, 1, 20);
	positive('compressor efficiency', efficiency);
	within('compressor efficiency', efficiency, 0, 1);
	return inlet * (1 + (ratio ** ((gamma - 1) / gamma) - 1) / efficiency);
}

/**
 * Temperature after an intercooler, K: the air that cools it and the air that enters it in K, effectiveness 0 to 1.
 *
 * Errors: OutOfRange. Source: definition of effectiveness of a heat exchanger.
 */
export function cooledTemperature(coolant: number, entering: number, effectiveness: number): number {
	positive('cooling air temperature', coolant);
	positive('entering temperature', entering);
	within('intercooler effectiveness', effectiveness, 0, 1);
	return entering - effectiveness * (entering - coolant);
}

/**
 * Flow as a compressor map shows it, kg/s, for a flow in kg/s at inlet temperature in K and inlet pressure in Pa.
 *
 * The map's day is 298.15 K and 100 kPa. Errors: OutOfRange. Source: definition of corrected flow.
 */
export function correctedFlow(flow: number, temperature: number, pressure: number): number {
	positive('air flow', flow);
	positive('inlet temperature', temperature);
	positive('inlet pressure', pressure);
	return (flow * Math.sqrt(temperature / 298.15)) / (pressure / 100e3);
}
