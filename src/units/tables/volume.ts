import { inch, usGallon } from '../defined.ts';
import { unitTable } from '../unit.ts';

export const volume = unitTable('volume', {
	'cu in': { factor: inch ** 3, partner: 'L', also: ['ci', 'cid', 'in3', 'cubic inch', 'cubic inches', 'cu inches'] },
	cc: { factor: 1e-6, partner: 'cu in', also: ['ccs', 'ccm', 'cm3', 'cu cm', 'ml', 'millilitre', 'millilitres'] },
	L: { factor: 1e-3, partner: 'cu in', also: ['ltr', 'litre', 'litres', 'liter', 'liters'] },
	gal: { factor: usGallon, partner: 'L', also: ['gals', 'gallon', 'gallons', 'US gal'] },
	m3: { factor: 1, partner: 'cu in', also: ['cu m', 'cubic metre', 'cubic metres'] },
});
