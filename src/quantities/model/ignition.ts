import type { Cylinder } from '../../physics/slider-crank.ts';
import {
	gasDensityAtSpark,
	requiredVoltage,
	sparkCapacity,
	sparkMargin,
	untriedCoil,
	untriedDistributor,
} from '../../physics/spark.ts';
import { limit, quantity, whatIf } from '../quantity.ts';
import { boosted } from './boost.ts';
import { boostRange } from './ranges.ts';

export const density = quantity({
	id: 'ignition.gas_density_at_spark',
	label: 'gas density at the spark',
	kind: 'ratio',
	inputs: [
		'engine.cylinder',
		'boost.manifold_pressure',
		'boost.charge_temp',
		'engine.intake_closes',
		'ignition.full_load_advance',
	],
	formula: '(manifold pressure / 101325)(293 / charge temperature) V(intake closing) / V(spark)',
	source: ['geometry', 'ideal-gas'],
	nature: 'exact',
	compute: q => {
		const cylinder = q.made<Cylinder>('engine.cylinder');
		const manifold = { pressure: q.number('boost.manifold_pressure'), temperature: q.number('boost.charge_temp') };
		const closes = q.number('engine.intake_closes');
		const advance = q.number('ignition.full_load_advance');
		return cylinder ? gasDensityAtSpark(cylinder, manifold, closes, advance) : undefined;
	},
});

export const required = quantity({
	id: 'ignition.required_voltage',
	label: 'spark voltage needed',
	kind: 'voltage',
	inputs: ['ignition.gas_density_at_spark', 'ignition.gap'],
	formula: '1000 (24.22 x + 6.08 sqrt x), x = gas density x gap in cm',
	source: ['naidu'],
	nature: 'estimate',
	compute: q => requiredVoltage(q.number('ignition.gas_density_at_spark'), q.number('ignition.gap')),
});

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

/** Rotor gap and cap take a share that differs from car to car and grows with wear; nothing is gained by them. */
export const distributorCoil = quantity({
	...coil,
	id: 'ignition.distributor_coil',
	label: 'coil with a distributor',
	formula: 'usual 27500, band 22000-29700: rotor and cap take up to a fifth, an estimate',
	band: [untriedDistributor.low / untriedDistributor.usual, untriedDistributor.high / untriedDistributor.usual],
});

/** Apart from the capacity, so that its band stops at what the coil has shown. */
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
		const shown = (id: 'ignition.proven_voltage' | 'ignition.blown_voltage') => (q.has(id) ? q.number(id) : null);
		const capacity = sparkCapacity(shown('ignition.proven_voltage'), shown('ignition.blown_voltage'), usual).usual;
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

export const margin = quantity({
	id: 'ignition.spark_margin',
	label: 'spark margin',
	shown: { us: '%', metric: '%' },
	kind: 'ratio',
	inputs: ['ignition.capacity', 'ignition.required_voltage'],
	range: [-1, null],
	formula: "capacity / required voltage - 1: the figure to judge; never compare the kilovolts with a catalog's",
	source: ['definition'],
	nature: 'exact',
	compute: q => sparkMargin(q.number('ignition.capacity'), q.number('ignition.required_voltage')),
});

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

/** m. What is set at home: a wider gap wears cap, rotor and boots. Common practice. */
const widest = { distributor: 0.06 * 0.0254, otherwise: 0.07 * 0.0254 } as const;

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
	id: 'ignition.boost_limit',
	label: 'spark boost limit',
	kind: 'pressure',
	inputs: ['boost.kind'],
	formula: 'the boost at which required voltage reaches capacity',
	source: ['root'],
	nature: 'estimate',
	limit: {
		vary: 'boost.target',
		until: 'ignition.required_voltage',
		reaches: 'ignition.capacity',
		rising: true,
		...boostRange,
	},
	when: boosted,
});
