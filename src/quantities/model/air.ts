import { ambientPressure, moistAirDensity } from '../../physics/atmosphere.ts';
import { quantity } from '../quantity.ts';

export const pressure = quantity({
	id: 'air.ambient_pressure',
	label: 'outside air pressure',
	kind: 'absolute-pressure',
	unit: 'Pa',
	inputs: ['build.altitude'],
	formula: '101325 (1 - 0.0065 H / 288.15)^5.255876, H = 6356766 h / (6356766 + h)',
	source: ['ussa76'],
	nature: 'exact',
	compute: q => ambientPressure(q.number('build.altitude')),
});

export const density = quantity({
	id: 'air.ambient_density',
	label: 'outside air density',
	kind: 'density',
	inputs: ['build.hot_day', 'build.humidity', 'air.ambient_pressure'],
	formula: 'density of moist air at the hot day, its humidity and the ambient pressure',
	source: ['ashrae'],
	nature: 'exact',
	compute: q =>
		moistAirDensity(q.number('build.hot_day'), q.number('build.humidity'), q.number('air.ambient_pressure')),
});

/** Water vapor displaces air, 5 % of it at 38 degC and 80 % humidity, 1 % on a mild day; the model's densities are of dry air. */
export const dryShare = quantity({
	id: 'air.dry_share',
	label: 'share of dry air',
	kind: 'ratio',
	inputs: [],
	range: [0, 1],
	formula: 'taken as 1, dry air; vapor takes the place of up to 5 % on a hot humid day',
	source: ['ashrae'],
	nature: 'estimate',
	band: [0.95, 1],
	compute: () => 1,
});
