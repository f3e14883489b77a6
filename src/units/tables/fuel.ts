import { foot, pound, usGallon } from '../defined.ts';
import { unitTable } from '../unit.ts';

export const density = unitTable('density', {
	'lb/gal': { factor: pound / usGallon, partner: 'kg/L', also: ['lbs/gal', 'lb/gallon', 'lbs/gallon'] },
	'lb/ft3': { factor: pound / foot ** 3, partner: 'kg/m3', also: ['lbs/ft3', 'lb/cu ft', 'lbs/cu ft'] },
	'kg/L': { factor: 1e3, partner: 'lb/gal', also: ['kg/litre', 'kg/liter', 'g/cc', 'g/cm3', 'g/ml'] },
	'kg/m3': { factor: 1, partner: 'lb/ft3', also: ['kg/cu m'] },
});

/** 2326 J/kg a BTU/lb is exact for the international table BTU (NIST SP 811, B.8). */
export const energyPerMass = unitTable('energy-per-mass', {
	'BTU/lb': { factor: 2326, partner: 'MJ/kg', also: ['BTU/pound'] },
	'MJ/kg': { factor: 1e6, partner: 'BTU/lb' },
	'kJ/kg': { factor: 1e3, partner: 'BTU/lb' },
	'J/kg': { factor: 1, partner: 'BTU/lb' },
});

/** Research less motor octane is usually 10, so the pump index, halfway between, lies 5 lower (common practice). */
export const octane = unitTable('octane', {
	AKI: {
		factor: 1,
		offset: 5,
		partner: 'RON',
		assumes: 'fuel.octane_sensitivity',
		also: ['(R+M)/2', 'PON', 'pump', 'pump octane', 'anti-knock index'],
	},
	RON: { factor: 1, partner: 'AKI', also: ['research', 'research octane'] },
});
