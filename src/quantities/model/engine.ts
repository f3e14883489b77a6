import {
	airFlow,
	displacement,
	idleAir,
	meanEffectivePressure,
	meanPistonSpeed,
	powerFromAir,
	torque,
	usualAirEfficiency,
} from '../../physics/airflow.ts';
import type { Point } from '../../physics/interpolate.ts';
import { assumption, quantity, whatIf } from '../quantity.ts';

export const size = quantity({
	id: 'engine.displacement',
	label: 'displacement',
	kind: 'volume',
	inputs: ['engine.cylinders', 'engine.bore', 'engine.stroke', 'engine.displacement_stated'],
	formula: 'cylinders pi/4 bore^2 stroke; else the stated displacement',
	source: ['geometry'],
	nature: 'exact',
	compute: q => {
		const measured = q.has('engine.bore') && q.has('engine.stroke');
		if (!measured && q.has('engine.displacement_stated')) return q.number('engine.displacement_stated');
		return displacement(q.number('engine.cylinders'), q.number('engine.bore'), q.number('engine.stroke'));
	},
});

export const strokeKnown = quantity({
	id: 'engine.stroke_used',
	label: 'stroke used',
	kind: 'length',
	inputs: ['engine.stroke', 'engine.bore', 'engine.cylinders', 'engine.displacement_stated'],
	formula: 'the stroke as answered; else stated displacement / (cylinders pi/4 bore^2)',
	source: ['geometry'],
	nature: 'exact',
	compute: q => {
		const derived = !q.has('engine.stroke') && q.has('engine.bore') && q.has('engine.displacement_stated');
		if (!derived) return q.number('engine.stroke');
		return (
			q.number('engine.displacement_stated') / displacement(q.number('engine.cylinders'), q.number('engine.bore'), 1)
		);
	},
});

export const sizeFromBore = quantity({
	id: 'engine.displacement_from_bore',
	label: 'displacement from bore and stroke',
	kind: 'volume',
	inputs: ['engine.cylinders', 'engine.bore', 'engine.stroke'],
	formula: 'cylinders pi/4 bore^2 stroke: never the stated displacement, which is checked against it',
	source: ['geometry'],
	nature: 'exact',
	compute: q => displacement(q.number('engine.cylinders'), q.number('engine.bore'), q.number('engine.stroke')),
});

export const air = quantity({
	id: 'engine.air_flow',
	label: 'engine air flow',
	shown: { us: 'lb/min', metric: 'kg/h' },
	kind: 'mass-flow',
	inputs: [
		'engine.volumetric_efficiency',
		'boost.manifold_density',
		'air.dry_share',
		'engine.displacement',
		'engine.peak_rpm',
	],
	formula:
		'volumetric efficiency x manifold density x displacement x rpm / 120, at peak_rpm; dry air, vapor in the band',
	source: ['heywood'],
	nature: 'exact',
	compute: q =>
		airFlow({
			volumetricEfficiency: q.number('engine.volumetric_efficiency'),
			density: q.number('boost.manifold_density') * q.number('air.dry_share'),
			displacement: q.number('engine.displacement'),
			rpm: q.number('engine.peak_rpm'),
		}),
});

export const pistonSpeed = quantity({
	id: 'engine.mean_piston_speed',
	label: 'mean piston speed',
	kind: 'velocity',
	inputs: ['engine.stroke_used', 'engine.redline'],
	formula: '2 stroke x redline / 60',
	source: ['definition'],
	nature: 'exact',
	compute: q => meanPistonSpeed(q.number('engine.stroke_used'), q.number('engine.redline')),
});

export const airEfficiency = quantity({
	id: 'engine.air_efficiency',
	label: 'work from the fuel',
	kind: 'ratio',
	inputs: ['boost.kind'],
	range: [0, 1],
	formula: 'usual 0.3133 unboosted, 0.2838 boosted: work per unit of the fuel energy that the air could burn',
	source: ['practice'],
	nature: 'estimate',
	band: [0.95, 1.2],
	assumes: true,
	compute: q => {
		const kind = q.choice('boost.kind');
		return kind && usualAirEfficiency[kind === 'none' ? 'unboosted' : 'boosted'];
	},
});

export const power = quantity({
	id: 'engine.power',
	label: 'power',
	kind: 'power',
	inputs: ['engine.air_flow', 'fuel.stoichiometric_ratio', 'fuel.heating_value', 'engine.air_efficiency'],
	formula: 'air flow / stoichiometric ratio x heating value x air efficiency; lambda does not enter',
	source: ['practice'],
	nature: 'estimate',
	compute: q =>
		powerFromAir({
			airFlow: q.number('engine.air_flow'),
			stoichiometricRatio: q.number('fuel.stoichiometric_ratio'),
			heatingValue: q.number('fuel.heating_value'),
			airEfficiency: q.number('engine.air_efficiency'),
		}),
});

export const turning = quantity({
	id: 'engine.torque',
	label: 'torque',
	kind: 'torque',
	inputs: ['engine.power', 'engine.peak_rpm'],
	formula: 'power / (2 pi N) at peak_rpm; peak torque is its own quantity',
	source: ['definition'],
	nature: 'exact',
	compute: q => torque(q.number('engine.power'), q.number('engine.peak_rpm')),
});

/** Stays where it is while a limit moves the boost: what a dyno curve was measured at. */
export const torqueAtTarget = whatIf({
	id: 'engine.torque_at_target',
	label: 'torque at the target boost',
	kind: 'torque',
	formula: 'torque at best power with boost as answered, whatever boost a limit is looked for at',
	source: ['definition'],
	nature: 'exact',
	whatIf: { of: 'engine.torque', with: { 'boost.target': 'boost.target' } },
});

export const torqueRise = assumption({
	id: 'engine.torque_rise',
	label: 'torque rise',
	kind: 'ratio',
	value: 1.15,
	spread: 0.05,
	formula: 'usual peak torque over torque at best power',
	source: ['practice'],
	nature: 'estimate',
});

export const peakTorque = quantity({
	id: 'engine.peak_torque',
	label: 'peak torque',
	kind: 'torque',
	inputs: ['engine.dyno_curve', 'boost.kind', 'engine.torque', 'engine.torque_at_target', 'engine.torque_rise'],
	formula:
		"highest point of the engine's own dyno curve, with boost in proportion to the torque at best power; else that torque x torque rise (usual 1.15, spread 0.05)",
	source: ['practice'],
	nature: 'estimate',
	compute: q => {
		if (!q.has('engine.dyno_curve')) return q.number('engine.torque') * q.number('engine.torque_rise');
		const highest = Math.max(...q.list<Point>('engine.dyno_curve')!.map(([, measured]) => measured));
		if (q.choice('boost.kind') === 'none') return highest;
		return (highest * q.number('engine.torque')) / q.number('engine.torque_at_target');
	},
});

export const bmep = quantity({
	id: 'engine.bmep',
	label: 'mean effective pressure (BMEP)',
	kind: 'pressure',
	inputs: ['engine.power', 'engine.displacement', 'engine.peak_rpm'],
	formula: '2 power / (displacement x N)',
	source: ['definition'],
	nature: 'exact',
	compute: q =>
		meanEffectivePressure(q.number('engine.power'), q.number('engine.displacement'), q.number('engine.peak_rpm')),
});

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
