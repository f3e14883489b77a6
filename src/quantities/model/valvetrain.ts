import { floatSpeed } from '../../physics/valvetrain.ts';
import { assumption, quantity } from '../quantity.ts';

export const coilBind = quantity({
	id: 'engine.coil_bind_clearance',
	label: 'coil bind clearance',
	kind: 'length',
	inputs: ['engine.spring_height', 'engine.valve_lift', 'engine.spring_solid_height'],
	range: [null, null],
	formula: 'installed height - valve lift - solid height',
	source: ['definition'],
	nature: 'exact',
	compute: q =>
		q.number('engine.spring_height') - q.number('engine.valve_lift') - q.number('engine.spring_solid_height'),
});

export const mass = assumption({
	id: 'engine.valvetrain_mass',
	label: 'moving mass at a valve',
	kind: 'mass',
	value: 0.29,
	spread: 0.05,
	formula:
		'usual mass that the spring moves: valve, retainer, a third of the spring, rocker, pushrod and lifter, all referred to the valve',
	source: ['practice'],
	nature: 'estimate',
});

export const float = quantity({
	id: 'engine.valve_float_speed',
	label: 'valve float speed',
	kind: 'rotation',
	inputs: ['engine.valve_lift', 'engine.cam_duration', 'engine.spring_open_force', 'engine.valvetrain_mass'],
	formula: 'speed at which the spring just follows the nose of a harmonic lift over the advertised duration',
	source: ['shigley', 'practice'],
	nature: 'estimate',
	band: [0.9, 1.15],
	compute: q =>
		floatSpeed({
			lift: q.number('engine.valve_lift'),
			duration: q.number('engine.cam_duration'),
			openForce: q.number('engine.spring_open_force'),
			mass: q.number('engine.valvetrain_mass'),
		}),
});
