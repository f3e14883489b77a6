import { boreArea } from './pipe.ts';
import { positive, within } from './range.ts';

/**
 * Area of an American Wire Gauge, m2, as solid copper. 0 is 0, 00 is -1, 000 is -2, 0000 is -3; range -3 to 40.
 *
 * Errors: OutOfRange. Source: ASTM B258: diameter 0.127 mm x 92^((36 - n) / 39).
 */
export function gaugeArea(gauge: number): number {
	within('wire gauge', gauge, -3, 40);
	return boreArea(0.127e-3 * 92 ** ((36 - gauge) / 39));
}

/**
 * Resistance of a copper wire, ohm: area in m2, length in m (0 or more), temperature in K (usual 293.15; 200 to 500).
 *
 * Errors: OutOfRange. Source: International Annealed Copper Standard: 1/58 ohm mm2/m at 20 degC, 0.00393 a K.
 */
export function copperResistance(area: number, length: number, temperature = 293.15): number {
	positive('wire area', area);
	within('wire length', length, 0, Number.MAX_VALUE);
	within('wire temperature', temperature, 200, 500);
	return ((1e-6 / 58) * (1 + 0.00393 * (temperature - 293.15)) * length) / area;
}

/** Volts that a circuit may lose out and back: 3 % of 13.5 V. Common practice for what must not dim. */
export const allowedDrop = 0.4;

/**
 * What a wire of vehicles has over solid copper at 20 degC: its strands are twisted, so 2 % longer than the wire, and it runs
 * warm. Estimate, common practice: 60 degC is a loaded wire in a warm engine bay.
 */
export const inVehicle = { stranding: 1.02, temperature: 333.15 } as const;

/** Volts lost in a stranded wire in a vehicle, out and back; arguments as in `wireDrop`. Errors: OutOfRange. Estimate. */
export function vehicleWireDrop(current: number, area: number, oneWay: number): number {
	return inVehicle.stranding * wireDrop(current, area, oneWay, inVehicle.temperature);
}

/** Volts lost out and back: current in A (0 or more), area in m2, length one way in m, temperature in K. Errors: OutOfRange. Ohm. */
export function wireDrop(current: number, area: number, oneWay: number, temperature?: number): number {
	within('current', current, 0, Number.MAX_VALUE);
	return 2 * current * copperResistance(area, oneWay, temperature);
}

/**
 * Longest run of a stranded wire in a vehicle, m one way, that loses no more than so many volts out and back: current in A,
 * area in m2. Errors: OutOfRange. Ohm. Estimate, as `vehicleWireDrop`.
 */
export function longestRun(volts: number, current: number, area: number): number {
	positive('volts lost', volts);
	positive('current', current);
	return volts / vehicleWireDrop(current, area, 1);
}
