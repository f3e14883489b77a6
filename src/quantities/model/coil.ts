import { sparkCapacity, untriedCoil, untriedDistributor } from '../../physics/spark.ts';
import { quantity, whatIf } from '../quantity.ts';

export const proven = whatIf({
	id: 'ignition.proven_voltage',
	label: 'proven coil voltage',
	kind: 'voltage',
	formula: 'required voltage at the widest gap and highest boost that ran clean on this coil',
	source: ['naidu'],
	nature: 'estimate',
	whatIf: {
		of: 'ignition.required_voltage',
		with: { 'boost.target': 'ignition.proven_boost', 'ignition.gap': 'ignition.proven_gap' },
	},
});

export const blown = whatIf({
	id: 'ignition.blown_voltage',
	label: 'voltage at which the spark broke up',
	kind: 'voltage',
	formula: 'required voltage at the smallest gap and lowest boost at which it broke up',
	source: ['naidu'],
	nature: 'estimate',
	whatIf: {
		of: 'ignition.required_voltage',
		with: { 'boost.target': 'ignition.blown_boost', 'ignition.gap': 'ignition.blown_gap' },
	},
});

const coil = {
	kind: 'hidden',
	inputs: [],
	source: ['practice'],
	nature: 'estimate',
	compute: () => untriedCoil.usual,
} as const;

export const directCoil = quantity({
	...coil,
	id: 'ignition.direct_coil',
	label: 'coil at the plug',
	formula: 'usual 27500, band 25600-29700: fits three facts of practice',
	band: [untriedCoil.low / untriedCoil.usual, untriedCoil.high / untriedCoil.usual],
});

/** Rotor gap and cap lose a share that differs from car to car and grows with wear: the band opens downward only. */
export const distributorCoil = quantity({
	...coil,
	id: 'ignition.distributor_coil',
	label: 'coil with a distributor',
	formula: 'usual 27500, band 22000-29700: rotor and cap take up to a fifth, an estimate',
	band: [untriedDistributor.low / untriedDistributor.usual, untriedDistributor.high / untriedDistributor.usual],
});

/** A quantity of its own, so that its band does not widen a capacity that a proven or blown point sets. */
export const untried = quantity({
	id: 'ignition.usual_capacity',
	label: 'usual coil voltage',
	kind: 'voltage',
	inputs: ['ignition.kind', 'ignition.direct_coil', 'ignition.distributor_coil'],
	formula: 'usual 27500, band 25600-29700, with a distributor 22000-29700',
	source: ['practice'],
	nature: 'estimate',
	compute: q =>
		q.has('ignition.kind') && q.choice('ignition.kind') === 'distributor'
			? q.number('ignition.distributor_coil')
			: q.number('ignition.direct_coil'),
});

export const capacity = quantity({
	id: 'ignition.capacity',
	label: 'coil voltage',
	kind: 'voltage',
	inputs: ['ignition.usual_capacity', 'ignition.proven_voltage', 'ignition.blown_voltage'],
	formula: 'usual 27500; a proven point raises it, a blown point lowers it, both bracket it',
	source: ['practice'],
	nature: 'estimate',
	compute: q => {
		const usual = q.number('ignition.usual_capacity');
		const numberIf = (id: 'ignition.proven_voltage' | 'ignition.blown_voltage') => (q.has(id) ? q.number(id) : null);
		const capacity = sparkCapacity(
			numberIf('ignition.proven_voltage'),
			numberIf('ignition.blown_voltage'),
			usual,
		).usual;
		if (capacity === usual) q.assume('ignition.capacity');
		return capacity;
	},
});

export const disagree = quantity({
	id: 'ignition.points_disagree',
	label: 'spark points contradict',
	kind: 'yes-no',
	inputs: ['ignition.proven_voltage', 'ignition.blown_voltage'],
	formula: 'it ran clean at a higher voltage than the one at which it broke up: one of the two answers is wrong',
	source: ['practice'],
	nature: 'exact',
	compute: q => {
		const [good, bad] = [q.number('ignition.proven_voltage'), q.number('ignition.blown_voltage')];
		return good > bad;
	},
});
