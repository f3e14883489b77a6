import { meanEffectivePressure, powerFromAir, torque, usualAirEfficiency } from '../../physics/airflow.ts';
import type { Point } from '../../physics/interpolate.ts';
import { assumption, quantity, whatIf } from '../quantity.ts';

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
