import { idleAir } from '../../physics/airflow.ts';
import { assumption, quantity } from '../quantity.ts';

export const idleSpeed = assumption({
	id: 'engine.idle_speed',
	label: 'idle speed',
	kind: 'rotation',
	value: 750,
	spread: 100,
	formula: 'usual idle speed',
	source: ['practice'],
	nature: 'estimate',
});

export const idleManifold = assumption({
	id: 'engine.idle_manifold_pressure',
	label: 'manifold pressure at idle',
	kind: 'absolute-pressure',
	value: 38e3,
	spread: 8e3,
	formula: 'usual manifold pressure at idle',
	source: ['practice'],
	nature: 'estimate',
});

export const idleFlow = quantity({
	id: 'engine.idle_air_flow',
	label: 'air flow at idle',
	shown: { us: 'lb/min', metric: 'kg/h' },
	kind: 'mass-flow',
	inputs: ['engine.displacement'],
	formula: 'usual 3.9 kg/h a liter at 750 rpm (spread 1.2)',
	source: ['practice'],
	nature: 'estimate',
	band: [1 - idleAir.spread / idleAir.usual, 1 + idleAir.spread / idleAir.usual],
	assumes: true,
	compute: q => idleAir.usual * q.number('engine.displacement'),
});
