import { foot, inch, mile } from '../defined.ts';
import { unitTable } from '../unit.ts';
import { dash } from './dash.ts';

export const length = [
	...unitTable('length', {
		in: { factor: inch, places: 3, partner: 'mm', also: ['inch', 'inches', 'ins', '"'] },
		thou: { factor: inch / 1000, partner: 'mm', also: ['thous', 'thousandths', 'mil', 'mils'] },
		ft: { factor: foot, partner: 'm', also: ['foot', 'feet', "'"] },
		mm: { factor: 1e-3, places: 2, partner: 'in', also: ['millimetre', 'millimetres', 'millimeter', 'millimeters'] },
		cm: { factor: 1e-2, partner: 'in', also: ['centimetre', 'centimetres', 'centimeter', 'centimeters'] },
		m: { factor: 1, partner: 'ft', also: ['metre', 'metres', 'meter', 'meters', 'mtr'] },
	}),
	dash,
];

/** How far a car has been driven. A kind of its own: nobody measures a part in miles. */
export const distance = unitTable('distance', {
	m: { factor: 1, partner: 'mi', also: ['meter', 'meters', 'metre', 'metres'] },
	mi: { factor: mile, partner: 'km', also: ['mile', 'miles'] },
	km: { factor: 1000, partner: 'mi', also: ['kilometer', 'kilometers', 'kilometre', 'kilometres'] },
});
