import { unitTable } from '../unit.ts';

export const ratio = unitTable('ratio', {
	1: { factor: 1 },
	':1': { factor: 1, also: ['to 1', 'to one'] },
	'%': { factor: 0.01, also: ['percent', 'per cent', 'pct'] },
	'pipe diameters': { factor: 1, also: ['diameters', 'diameter', 'pipe diameter', 'dia', 'D'] },
});

export const count = unitTable('count', { '': { factor: 1 } });
