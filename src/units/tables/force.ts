import { foot, horsepower, inch, pound, poundForce, standardGravity } from '../defined.ts';
import { unitTable } from '../unit.ts';

export const force = unitTable('force', {
	lbf: { factor: poundForce, partner: 'N', also: ['lb', 'lbs', 'pounds', 'pounds-force', 'lbs force'] },
	N: { factor: 1, partner: 'lbf', also: ['newton', 'newtons'] },
	kN: { factor: 1e3, partner: 'lbf', also: ['kilonewton', 'kilonewtons'] },
	kgf: { factor: standardGravity, partner: 'lbf', also: ['kg', 'kp', 'kg force'] },
});

export const mass = unitTable('mass', {
	lb: { factor: pound, partner: 'kg', also: ['lbs', 'pound', 'pounds'] },
	kg: { factor: 1, partner: 'lb', also: ['kilo', 'kilos', 'kilogram', 'kilograms'] },
});

export const torque = unitTable('torque', {
	'lb-ft': {
		factor: poundForce * foot,
		partner: 'N m',
		also: ['lbs-ft', 'lbf-ft', 'ft-lb', 'ft-lbs', 'ft-lbf', 'foot pounds', 'foot-pound', 'pound-feet', 'lb-feet'],
	},
	'lb-in': {
		factor: poundForce * inch,
		partner: 'N m',
		also: ['lbs-in', 'lbf-in', 'in-lb', 'in-lbs', 'in-lbf', 'inch pounds', 'pound-inches'],
	},
	'N m': { factor: 1, partner: 'lb-ft', also: ['newton metre', 'newton metres', 'newton meters'] },
	'kgf m': { factor: standardGravity, partner: 'lb-ft', also: ['kg m', 'm kg', 'kp m'] },
});

export const power = unitTable('power', {
	hp: { factor: horsepower, partner: 'kW', also: ['bhp', 'horsepower', 'horse power', 'horses'] },
	PS: { factor: 75 * standardGravity, partner: 'hp', also: ['metric hp', 'metric horsepower', 'cv', 'ch', 'pk'] },
	kW: { factor: 1e3, partner: 'hp', also: ['kilowatt', 'kilowatts'] },
	W: { factor: 1, partner: 'hp', also: ['watt', 'watts'] },
});

const ounce = pound / 16;

/** Weight times arm of a balance weight: a mass here, not a force. */
export const imbalance = unitTable('imbalance', {
	'oz-in': { factor: ounce * inch, partner: 'g-cm', also: ['in-oz', 'ounce-inch', 'ounce-inches', 'ozs in'] },
	'g-cm': { factor: 1e-5, partner: 'oz-in', also: ['gm-cm', 'cm-g', 'gram cm'] },
	'g-mm': { factor: 1e-6, partner: 'oz-in', also: ['gm-mm', 'mm-g', 'gram mm'] },
	'g-in': { factor: 1e-3 * inch, partner: 'oz-in', also: ['gm-in', 'in-g', 'gram inch', 'gram inches'] },
	'kg m': { factor: 1, partner: 'oz-in' },
});
