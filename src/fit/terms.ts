import { nineOfTen } from '../graph/uncertain.ts';
import type { Declared } from '../log/declared.ts';

/** An unknown that no answer stands for: what a sensor is off, how the filling goes over engine speed. */
export interface Term {
	/** `sensor: fuel_pressure`, `breathing 1`. */
	readonly id: string;
	/** The channel of a sensor; null of the terms of shape. */
	readonly channel: string | null;
}

/** Channels of which the sensor's own error is an unknown: one a sensor, shared by all points and all logs. */
export const sensors = [
	'manifold_pressure',
	'lambda_1',
	'lambda_2',
	'charge_temp',
	'ambient_temp',
	'injector_pulse',
	'meter_volts',
	'air_flow',
	'fuel_pressure',
	'pump_volts',
	'road_load',
] as const;
export type Sensor = (typeof sensors)[number];

/** How far a sensor is off, one standard deviation: a share, or a difference in its unit (K, Pa, 1 for lambda). */
export function sensorErrors({
	sensor_error: error,
}: Pick<Declared, 'sensor_error'>): Readonly<Record<Sensor, number>> {
	return {
		manifold_pressure: error.manifold,
		lambda_1: error.lambda,
		lambda_2: error.lambda,
		charge_temp: error.temperature,
		ambient_temp: error.temperature,
		injector_pulse: error.pulse,
		meter_volts: error.meter,
		air_flow: error.meter,
		fuel_pressure: error.pressure,
		pump_volts: error.volts,
		// Mass as driven, drag and losses through the driveline together: log.power says 10 %.
		road_load: 0.1,
	};
}

/** Terms of the shape of filling over engine speed, 3 % each at half the speed of best power. */
export const fillingShape = { terms: 3, deviation: 0.03 } as const;

/** Outside air of a log without it: K, usual and one standard deviation. Common practice. */
export const ambientPrior = { usual: 293, deviation: 10 } as const;

/** The coldest and the warmest of it that are likely, K: nine of ten lie between. */
export const likelyAmbient = [-nineOfTen, nineOfTen].map(z => ambientPrior.usual + z * ambientPrior.deviation) as [
	cold: number,
	warm: number,
];

/**
 * What the model leaves out at one point, one standard deviation: shares of pulse, meter volts, air flow and power; Pa of the
 * rail; V of the pump; K of the charge, whose cooler is not yet as hot in a short pull as the model has it.
 */
export const modelDiscrepancy = {
	injector_pulse: 0.01,
	meter_volts: 0.006,
	air_flow: 0.01,
	road_load: 0.03,
	fuel_pressure: 3000,
	pump_volts: 0.1,
	charge_temp: 5,
	idle_rail: 5000,
} as const;
