import { airFlow, displacement, meanPistonSpeed } from '../../physics/airflow.ts';
import { quantity } from '../quantity.ts';

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
