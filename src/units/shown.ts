import type { Kind } from './kinds.ts';
import { unitNamed } from './names.ts';
import type { Unit } from './unit.ts';

/** US-trade units, or the metric ones of the trade. */
export type UnitSet = 'us' | 'metric';

/** The unit of each kind in the two sets; one name where both use it. A question may name another. */
const shown: Readonly<Record<Kind, string | readonly [us: string, metric: string]>> = {
	length: ['in', 'mm'],
	distance: ['mi', 'km'],
	area: ['AWG', 'mm2'],
	volume: ['cu in', 'L'],
	pressure: ['psi', 'bar'],
	'absolute-pressure': ['psia', 'kPa abs'],
	temperature: ['degF', 'degC'],
	'temperature-difference': ['degF', 'degC'],
	angle: 'deg',
	rotation: 'rpm',
	'mass-flow': ['lb/h', 'kg/h'],
	'volume-flow': ['gal/h', 'L/h'],
	power: ['hp', 'kW'],
	torque: ['lb-ft', 'N m'],
	force: ['lbf', 'N'],
	mass: ['lb', 'kg'],
	velocity: ['ft/s', 'm/s'],
	ratio: '1',
	voltage: 'V',
	current: 'A',
	resistance: 'ohm',
	'resistance-per-length': ['ohm/ft', 'ohm/m'],
	charge: 'Ah',
	time: 'ms',
	days: 'days',
	imbalance: ['oz-in', 'g-cm'],
	octane: ['AKI', 'RON'],
	pulses: ['pulses/mi', 'pulses/km'],
	density: ['lb/ft3', 'kg/m3'],
	'energy-per-mass': ['BTU/lb', 'MJ/kg'],
	count: '',
};

/** The unit in which a number of this kind is shown, where nothing asks for another. */
export function shownUnit(kind: Kind, set: UnitSet): Unit {
	const names = shown[kind];
	return unitNamed(typeof names === 'string' ? names : names[set === 'us' ? 0 : 1], [kind])!;
}
