import { inch } from '../../units/defined.ts';
import { limit, quantity } from '../quantity.ts';
import { boostLimitBase, varyingBoost } from './limit-ranges.ts';

export const gapFires = limit({
	id: 'ignition.gap_fires',
	label: 'widest gap the coil fires',
	kind: 'length',
	inputs: [],
	formula: 'the gap at which required voltage reaches capacity',
	source: ['root'],
	nature: 'estimate',
	limit: {
		vary: 'ignition.gap',
		until: 'ignition.required_voltage',
		reaches: 'ignition.capacity',
		rising: true,
		from: 1e-4,
		to: 5e-3,
	},
});

/** m: the widest gap to set; a wider one wears cap, rotor and boots. Common practice. */
const widest = { distributor: 0.06 * inch, otherwise: 0.07 * inch } as const;

export const gapLimit = quantity({
	id: 'ignition.gap_limit',
	label: 'gap limit',
	kind: 'length',
	inputs: ['ignition.gap_fires', 'ignition.kind'],
	formula: {
		us: 'the gap at which required voltage reaches capacity, never over 0.060 in with a distributor, 0.070 in otherwise',
		metric:
			'the gap at which required voltage reaches capacity, never over 1.52 mm with a distributor, 1.78 mm otherwise',
	},
	source: ['root', 'practice'],
	nature: 'estimate',
	compute: q => {
		const distributor = q.has('ignition.kind') && q.choice('ignition.kind') === 'distributor';
		return Math.min(q.number('ignition.gap_fires'), distributor ? widest.distributor : widest.otherwise);
	},
});

export const boostLimit = limit({
	...boostLimitBase,
	id: 'ignition.boost_limit',
	label: 'spark boost limit',
	formula: 'the boost at which required voltage reaches capacity',
	limit: {
		...varyingBoost,
		until: 'ignition.required_voltage',
		reaches: 'ignition.capacity',
		rising: true,
	},
});
