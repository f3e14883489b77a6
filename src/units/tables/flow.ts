import { foot, pound, usGallon } from '../defined.ts';
import { unitTable } from '../unit.ts';

const [minute, hour] = [60, 3600];

export const massFlow = unitTable('mass-flow', {
	'lb/h': {
		factor: pound / hour,
		partner: 'kg/h',
		also: ['lb/hr', 'lbs/h', 'lbs/hr', 'lbm/h', 'lbm/hr', 'lb/hour', 'lbs/hour', 'pounds/hour', 'pph', '#/hr', '#/h'],
	},
	'lb/min': { factor: pound / minute, partner: 'kg/h', also: ['lbs/min', 'lbm/min', 'lb/minute', 'pounds/minute'] },
	'kg/h': { factor: 1 / hour, partner: 'lb/min', also: ['kg/hr', 'kgs/h', 'kgs/hr', 'kg/hour', 'kgph'] },
	'kg/min': { factor: 1 / minute, partner: 'lb/min', also: ['kg/minute'] },
	'g/s': { factor: 1e-3, partner: 'lb/min', also: ['g/sec', 'gm/s', 'gm/sec', 'gps', 'grams/second'] },
	'kg/s': { factor: 1, partner: 'lb/min', also: ['kg/sec', 'kg/second'] },
});

export const volumeFlow = unitTable('volume-flow', {
	'gal/h': {
		factor: usGallon / hour,
		partner: 'L/h',
		also: ['gal/hr', 'gals/hr', 'gal/hour', 'gallons/hour', 'gph', 'US gal/h'],
	},
	'gal/min': { factor: usGallon / minute, partner: 'L/min', also: ['gallons/minute', 'gpm', 'US gal/min'] },
	'cu ft/min': { factor: foot ** 3 / minute, partner: 'L/min', also: ['cfm', 'ft3/min', 'cubic feet/minute'] },
	'L/h': {
		factor: 1e-3 / hour,
		partner: 'gal/h',
		also: ['l/hr', 'lph', 'ltr/h', 'ltr/hr', 'litres/hour', 'liters/hour'],
	},
	'L/min': { factor: 1e-3 / minute, partner: 'gal/h', also: ['lpm', 'l/minute', 'litres/minute', 'liters/minute'] },
	'cc/min': {
		factor: 1e-6 / minute,
		partner: 'gal/h',
		also: ['cc/m', 'ccm', 'cc/minute', 'cm3/min', 'ml/min', 'ml/minute'],
	},
	'm3/s': { factor: 1, partner: 'gal/h', also: ['m3/sec'] },
});
