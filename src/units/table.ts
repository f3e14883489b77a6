import type { Kind } from './kinds.ts';
import { count, ratio } from './tables/bare.ts';
import { charge, current, resistance, resistancePerLength, voltage } from './tables/electrical.ts';
import { massFlow, volumeFlow } from './tables/flow.ts';
import { force, imbalance, mass, power, torque } from './tables/force.ts';
import { density, energyPerMass, octane } from './tables/fuel.ts';
import { distance, length } from './tables/length.ts';
import { angle, days, pulses, rotation, time, velocity } from './tables/motion.ts';
import { absolutePressure, pressure } from './tables/pressure.ts';
import { temperature, temperatureDifference } from './tables/temperature.ts';
import { volume } from './tables/volume.ts';
import { areas } from './tables/wire.ts';
import type { Unit } from './unit.ts';

const tables: Readonly<Record<Kind, readonly Unit[]>> = {
	length,
	distance,
	area: areas,
	volume,
	pressure,
	'absolute-pressure': absolutePressure,
	temperature,
	'temperature-difference': temperatureDifference,
	angle,
	rotation,
	'mass-flow': massFlow,
	'volume-flow': volumeFlow,
	power,
	torque,
	force,
	mass,
	velocity,
	ratio,
	voltage,
	current,
	resistance,
	'resistance-per-length': resistancePerLength,
	charge,
	time,
	days,
	imbalance,
	octane,
	pulses,
	density,
	'energy-per-mass': energyPerMass,
	count,
};

/** Every unit of a kind, the trade's usual ones first. */
export function unitsOf(kind: Kind): readonly Unit[] {
	return tables[kind];
}

/** Every kind. */
export const kinds = Object.keys(tables) as readonly Kind[];
