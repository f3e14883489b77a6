import { speedError } from '../../physics/driveline.ts';
import { percent, quantity } from '../quantity.ts';

/** Pa that a pressure sensor should read over the manifold: weather and overshoot. Common practice. */
const sensorReserve = 10e3;

export const mapMargin = quantity({
	id: 'sensors.map_margin',
	label: 'MAP sensor margin',
	shown: percent,
	kind: 'ratio',
	inputs: ['sensors.map_full_scale', 'boost.manifold_pressure'],
	range: [-1, null],
	formula: 'map_full_scale / (manifold pressure + 10 kPa) - 1',
	source: ['practice'],
	nature: 'exact',
	compute: q => q.number('sensors.map_full_scale') / (q.number('boost.manifold_pressure') + sensorReserve) - 1,
});

export const speed = quantity({
	id: 'sensors.speed_error',
	label: 'speed error',
	shown: percent,
	kind: 'ratio',
	inputs: ['sensors.speed_pulses_sent', 'sensors.speed_pulses_expected'],
	range: [-1, null],
	formula: 'pulses sent / pulses expected - 1',
	source: ['definition'],
	nature: 'exact',
	compute: q => speedError(q.number('sensors.speed_pulses_sent'), q.number('sensors.speed_pulses_expected')),
});
