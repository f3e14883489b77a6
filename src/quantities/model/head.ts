import {
	headClampRatio,
	headFastenerArea,
	nutFactor,
	preloadFromTorque,
	preloadOfStretch,
} from '../../physics/bolts.ts';
import { assumption, limit, quantity } from '../quantity.ts';
import { boostLimitBase, varyingBoost } from './limit-ranges.ts';

export const friction = assumption({
	id: 'engine.fastener_friction',
	label: 'fastener nut factor',
	kind: 'ratio',
	value: nutFactor.oiled,
	spread: 0.3 * nutFactor.oiled,
	formula: 'nut factor K of an oiled thread (condition not known 0.20, dry 0.20 to 0.30, moly 0.13)',
	source: ['shigley'],
	nature: 'estimate',
});

/** The thread's pitch is not asked for: the area with the coarse one, which is smaller; up to 13 % more if it is fine. */
export const area = quantity({
	id: 'engine.fastener_area',
	label: 'fastener stress area',
	kind: 'area',
	shown: { us: 'sq in', metric: 'mm2' },
	inputs: ['engine.fastener_size'],
	formula: 'tensile stress area with the coarse pitch; fine: up to 13 % more',
	source: ['iso-898-1'],
	nature: 'estimate',
	band: [1, 1.13],
	compute: q => headFastenerArea(q.number('engine.fastener_size')).coarse,
});

export const preload = quantity({
	id: 'engine.fastener_preload',
	label: 'fastener preload',
	kind: 'force',
	inputs: [
		'engine.head_fasteners',
		'engine.fastener_size',
		'engine.fastener_area',
		'engine.fastener_torque',
		'engine.fastener_friction',
	],
	formula: 'studs and bolts: torque / (K d); stretch: 830 MPa x stress area, 0.75 of that when used again',
	source: ['shigley', 'iso-898-1'],
	nature: 'estimate',
	compute: q => {
		const kind = q.choice('engine.head_fasteners');
		const size = q.number('engine.fastener_size');
		if (kind === 'studs' || kind === 'reusable-bolts') {
			return preloadFromTorque(q.number('engine.fastener_torque'), size, q.number('engine.fastener_friction'));
		}
		return kind && preloadOfStretch(q.number('engine.fastener_area'), kind === 'stretch-reused');
	},
});

export const clamp = quantity({
	id: 'engine.head_clamp_ratio',
	label: 'head clamp ratio',
	kind: 'ratio',
	inputs: [
		'engine.fastener_preload',
		'engine.fastener_count',
		'engine.cylinders',
		'engine.gasket_bore',
		'engine.peak_pressure',
	],
	formula: 'preload x fasteners a bank / (cylinders / 2) over peak pressure x pi/4 gasket bore^2',
	source: ['statics'],
	nature: 'estimate',
	compute: q =>
		headClampRatio({
			preload: q.number('engine.fastener_preload'),
			fasteners: q.number('engine.fastener_count'),
			cylinders: q.number('engine.cylinders') / 2,
			gasketBore: q.number('engine.gasket_bore'),
			peakPressure: q.number('engine.peak_pressure'),
		}),
});

/** Clamp ratio under which a head begins to lift and the gasket to weep. Common practice. */
const liftRatio = 1.3;

export const boostLimit = limit({
	...boostLimitBase,
	id: 'engine.head_boost_limit',
	label: 'head clamp boost limit',
	expensive: true,
	formula: 'the boost at which the clamp ratio reaches 1.3',
	limit: { ...varyingBoost, until: 'engine.head_clamp_ratio', reaches: liftRatio, rising: false },
});
