import { foot, inch } from '../defined.ts';
import { unitTable } from '../unit.ts';

export const voltage = unitTable('voltage', {
	V: { factor: 1, also: ['volt', 'volts', 'vdc', 'v dc'] },
	mV: { factor: 1e-3, also: ['millivolt', 'millivolts'] },
	kV: { factor: 1e3, also: ['kilovolt', 'kilovolts'] },
});

export const current = unitTable('current', {
	A: { factor: 1, also: ['amp', 'amps', 'ampere', 'amperes'] },
	mA: { factor: 1e-3, also: ['milliamp', 'milliamps', 'milliampere', 'milliamperes'] },
});

export const resistance = unitTable('resistance', {
	ohm: { factor: 1, also: ['ohms', 'R'] },
	kohm: { factor: 1e3, also: ['kohms', 'kiloohm', 'kiloohms', 'kilohm', 'kilohms', 'k'] },
});

export const resistancePerLength = unitTable('resistance-per-length', {
	'ohm/ft': { factor: 1 / foot, partner: 'ohm/m', also: ['ohms/ft', 'ohm/foot', 'ohms/foot'] },
	'kohm/ft': { factor: 1e3 / foot, partner: 'kohm/m', also: ['kohms/ft', 'k/ft', 'kohm/foot', 'kohms/foot'] },
	'ohm/in': { factor: 1 / inch, partner: 'ohm/m', also: ['ohms/in', 'ohm/inch', 'ohms/inch'] },
	'kohm/m': { factor: 1e3, partner: 'kohm/ft', also: ['kohms/m', 'k/m'] },
	'ohm/m': { factor: 1, partner: 'ohm/ft', also: ['ohms/m', 'ohm/metre', 'ohm/meter'] },
});

export const charge = unitTable('charge', {
	Ah: { factor: 3600, also: ['amp-hour', 'amp-hours', 'amp hr', 'ampere-hours', 'A h', 'a.hr'] },
	C: { factor: 1, also: ['coulomb', 'coulombs', 'A s'] },
});
