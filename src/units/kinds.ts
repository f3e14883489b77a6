/**
 * The kinds of number the project knows, each with the unit it is kept in.
 *
 * Inside, everything is SI except angles (deg), engine speed (rpm) and days.
 * `pressure` is a gauge pressure or a difference of pressures; `absolute-pressure` is another kind,
 * so that one can never be compared with the other by mistake.
 */
export const canonicalUnits = {
	length: 'm',
	/** Driven on the road. */
	distance: 'm',
	area: 'm2',
	volume: 'm3',
	pressure: 'Pa',
	'absolute-pressure': 'Pa abs',
	temperature: 'K',
	'temperature-difference': 'K diff',
	angle: 'deg',
	rotation: 'rpm',
	'mass-flow': 'kg/s',
	'volume-flow': 'm3/s',
	power: 'W',
	torque: 'N m',
	force: 'N',
	mass: 'kg',
	velocity: 'm/s',
	ratio: '1',
	voltage: 'V',
	current: 'A',
	resistance: 'ohm',
	'resistance-per-length': 'ohm/m',
	charge: 'C',
	time: 's',
	days: 'days',
	imbalance: 'kg m',
	octane: 'RON',
	pulses: 'pulses/m',
	density: 'kg/m3',
	'energy-per-mass': 'J/kg',
	/** Whole numbers: years, teeth, counts. No unit. */
	count: '',
} as const;

/** A kind of number: length, pressure, mass flow ... */
export type Kind = keyof typeof canonicalUnits;
