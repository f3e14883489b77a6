import { companions } from '../../physics/firing-order.ts';
import { horsepower } from '../../units/defined.ts';
import { quantity } from '../quantity.ts';

export const pairs = quantity({
	id: 'ignition.companions',
	label: 'companion cylinders',
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
	label: 'coil pairs are companions',
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
		// The pairs answered are right; of the others nothing is known.
		return towers.length === right.length || q.lack('ignition.towers');
	},
});

/** W over the power of the unboosted engine for each heat range step: 100 hp. Common practice. */
const powerPerStep = 100 * horsepower;

export const heatSteps = quantity({
	id: 'ignition.heat_steps_needed',
	label: 'heat range steps needed',
	kind: 'ratio',
	inputs: ['boost.kind', 'engine.power', 'boost.density_ratio'],
	formula: {
		us: 'one step for every 100 hp that boost adds: power (1 - 1 / density ratio) / 100 hp; unboosted 0',
		metric: 'one step for every 75 kW that boost adds: power (1 - 1 / density ratio) / 75 kW; unboosted 0',
	},
	source: ['practice'],
	nature: 'estimate',
	compute: q => {
		if (q.choice('boost.kind') === 'none') return 0;
		return Math.max(0, (q.number('engine.power') * (1 - 1 / q.number('boost.density_ratio'))) / powerPerStep);
	},
});

export const wireResistance = quantity({
	id: 'ignition.wire_resistance_per_length',
	label: 'plug wire resistance per length',
	kind: 'resistance-per-length',
	inputs: ['ignition.wire_resistance', 'ignition.wire_length'],
	formula: 'resistance of the wire / its length',
	source: ['definition'],
	nature: 'exact',
	compute: q => q.number('ignition.wire_resistance') / q.number('ignition.wire_length'),
});
