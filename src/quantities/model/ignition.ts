import { companions } from '../../physics/firing-order.ts';
import type { Cylinder } from '../../physics/slider-crank.ts';
import { gasDensityAtSpark, requiredVoltage, sparkCapacity, sparkMargin, untriedCoil } from '../../physics/spark.ts';
import { elsewhere, limit, quantity } from '../quantity.ts';
import { boosted } from './boost.ts';
import { boostRange } from './ranges.ts';

export const density = quantity({
	id: 'ignition.gas_density_at_spark',
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
		return cylinder && !q.lacks ? gasDensityAtSpark(cylinder, manifold, closes, advance) : undefined;
	},
});

export const required = quantity({
	id: 'ignition.required_voltage',
	kind: 'voltage',
	inputs: ['ignition.gas_density_at_spark', 'ignition.gap'],
	formula: '1000 (24.22 x + 6.08 sqrt x), x = gas density x gap in cm',
	source: ['naidu'],
	nature: 'estimate',
	compute: q => requiredVoltage(q.number('ignition.gas_density_at_spark'), q.number('ignition.gap')),
});

export const proven = elsewhere({
	id: 'ignition.proven_voltage',
	kind: 'voltage',
	formula: 'required voltage at the widest gap and highest boost that ran clean on this coil',
	source: ['naidu'],
	nature: 'estimate',
	elsewhere: {
		of: 'ignition.required_voltage',
		with: { 'boost.target': 'ignition.proven_boost', 'ignition.gap': 'ignition.proven_gap' },
	},
});

export const blown = elsewhere({
	id: 'ignition.blown_voltage',
	kind: 'voltage',
	formula: 'required voltage at the smallest gap and lowest boost at which it broke up',
	source: ['naidu'],
	nature: 'estimate',
	elsewhere: {
		of: 'ignition.required_voltage',
		with: { 'boost.target': 'ignition.blown_boost', 'ignition.gap': 'ignition.blown_gap' },
	},
});

/** Apart from the capacity, so that its band stops at what the coil has shown. */
export const untried = quantity({
	id: 'ignition.usual_capacity',
	kind: 'voltage',
	inputs: [],
	formula: 'usual 27500, band 25600-29700: fits three facts of practice',
	source: ['practice'],
	nature: 'estimate',
	band: [untriedCoil.low / untriedCoil.usual, untriedCoil.high / untriedCoil.usual],
	compute: () => untriedCoil.usual,
});

export const capacity = quantity({
	id: 'ignition.capacity',
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
	kind: 'yes-no',
	inputs: ['ignition.proven_voltage', 'ignition.blown_voltage'],
	formula: 'it ran clean at a higher voltage than the one at which it broke up: one of the two answers is wrong',
	source: ['practice'],
	nature: 'exact',
	compute: q => {
		const [good, bad] = [q.number('ignition.proven_voltage'), q.number('ignition.blown_voltage')];
		return q.lacks || q.idle ? undefined : good > bad;
	},
});

export const margin = quantity({
	id: 'ignition.spark_margin',
	shown: { us: '%', metric: '%' },
	kind: 'ratio',
	inputs: ['ignition.capacity', 'ignition.required_voltage'],
	range: [-1, null],
	formula: "capacity / required voltage - 1: the figure to judge; never compare the kilovolts with a catalogue's",
	source: ['definition'],
	nature: 'exact',
	compute: q => sparkMargin(q.number('ignition.capacity'), q.number('ignition.required_voltage')),
});

export const gapLimit = limit({
	id: 'ignition.gap_limit',
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

export const boostLimit = limit({
	id: 'ignition.boost_limit',
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

export const pairs = quantity({
	id: 'ignition.companions',
	kind: 'list',
	inputs: ['engine.firing_order'],
	formula: 'cylinders half the firing order apart; an odd count has none',
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		const order = q.list<number>('engine.firing_order');
		return order && (order.length % 2 === 0 ? companions(order) : null);
	},
});

/** Whether each coil fires two cylinders that are half the firing order apart. */
export const towersRight = quantity({
	id: 'ignition.towers_are_companions',
	kind: 'yes-no',
	inputs: ['ignition.companions', 'ignition.towers'],
	formula: 'every pair of towers is a pair of companions',
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		const right = q.list<readonly [number, number]>('ignition.companions');
		const towers = q.list<readonly [number, number]>('ignition.towers');
		if (!right || !towers) return undefined;
		const fits = ([a, b]: readonly [number, number]) =>
			right.some(([c, d]) => (a === c && b === d) || (a === d && b === c));
		if (!towers.every(fits)) return false;
		// The pairs told are right; of those not told nothing is known.
		return towers.length === right.length || q.lack('ignition.towers');
	},
});

/** One heat step for this much power over the unboosted engine, W: 100 hp. Common practice. */
const powerAStep = 100 * 550 * 0.3048 * 4.4482216152605;

export const heatSteps = quantity({
	id: 'ignition.heat_steps_needed',
	kind: 'ratio',
	inputs: ['boost.kind', 'engine.power', 'boost.density_ratio'],
	formula: 'one step for every 100 hp that boost adds: power (1 - 1 / density ratio) / 100 hp; unboosted 0',
	source: ['practice'],
	nature: 'estimate',
	compute: q => {
		const kind = q.choice('boost.kind');
		if (kind === undefined || kind === 'none') return kind && 0;
		return Math.max(0, (q.number('engine.power') * (1 - 1 / q.number('boost.density_ratio'))) / powerAStep);
	},
});

export const wireResistance = quantity({
	id: 'ignition.wire_resistance_per_length',
	kind: 'resistance-per-length',
	inputs: ['ignition.wire_resistance', 'ignition.wire_length'],
	formula: 'resistance of the wire / its length',
	source: ['definition'],
	nature: 'exact',
	compute: q => q.number('ignition.wire_resistance') / q.number('ignition.wire_length'),
});
