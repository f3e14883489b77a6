import { inch } from '../../units/defined.ts';
import { quantity } from '../quantity.ts';

export const weightPerInch = quantity({
	id: 'build.front_weight_per_inch',
	label: 'weight that sinks the front an inch',
	kind: 'mass',
	inputs: ['build.front_mass_added', 'build.front_sag'],
	formula: {
		us: 'weight added in front / how far it sank, both springs together',
		metric: 'weight added in front x 25.4 mm / how far it sank, both springs together',
	},
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		// A front that got lighter and sank, or heavier and rose, was not moved by its weight.
		const rate = (q.number('build.front_mass_added') * inch) / q.number('build.front_sag');
		return rate > 0 && Number.isFinite(rate) ? rate : null;
	},
});
