import { limit, quantity } from '../quantity.ts';
import { boosted } from './boost.ts';
import { boostRange } from './ranges.ts';

/** A rail that is held over the outside pressure feeds nothing once the manifold has its pressure. */
export const most = quantity({
	id: 'boost.most',
	kind: 'pressure',
	inputs: ['boost.kind', 'fuel.reference', 'fuel.pressure'],
	range: [boostRange.from, boostRange.to],
	formula: '40 psi, where limits stop being looked for; on a fixed rail its set point, if that is less',
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		if (q.choice('boost.kind') === 'none') return null;
		const fixed = q.has('fuel.reference') && q.choice('fuel.reference') === 'atmosphere' && q.has('fuel.pressure');
		return fixed ? Math.min(boostRange.to, q.number('fuel.pressure')) : boostRange.to;
	},
});

export const forPowerGoal = limit({
	id: 'boost.for_power_goal',
	kind: 'pressure',
	inputs: ['boost.kind'],
	formula: 'the boost at which the computed power meets the goal',
	source: ['root'],
	nature: 'estimate',
	limit: { vary: 'boost.target', until: 'engine.power', reaches: 'build.power_goal', rising: true, ...boostRange },
	when: boosted,
});

const placed = [
	'injectors.boost_limit',
	'fuel.pump_boost_limit',
	'sensors.meter_boost_limit',
	'ignition.boost_limit',
	'engine.knock_boost_limit',
	'engine.head_boost_limit',
	'driveline.clutch_boost_limit',
	'driveline.gearbox_boost_limit',
] as const;

/** One that is not known could lie lower still, so it is asked for, unless a known one already lies under the target. */
export const lowestLimit = quantity({
	id: 'boost.lowest_limit',
	kind: 'pressure',
	inputs: ['boost.kind', 'boost.target', ...placed],
	range: [boostRange.from, boostRange.to],
	formula:
		'the lowest boost limit that applies here; not known while one is not known and the others lie over the target',
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		if (q.choice('boost.kind') === 'none') return null;
		const here = placed.filter(id => q.applies(id));
		const known = here.filter(id => q.has(id)).map(id => q.number(id));
		if (known.some(limit => limit < q.number('boost.target'))) return Math.min(...known);
		return here.length > 0 ? Math.min(...here.map(id => q.number(id))) : null;
	},
});
