import { assumption, limit, quantity } from '../quantity.ts';
import { boostLimitBase, boostRange, varyingBoost } from './limit-ranges.ts';

/** A rail that is regulated against the outside air feeds nothing once the manifold has the rail's pressure. */
export const most = quantity({
	id: 'boost.most',
	label: 'highest boost looked at',
	kind: 'pressure',
	inputs: ['boost.kind', 'fuel.reference', 'fuel.pressure'],
	range: [boostRange.from, boostRange.to],
	formula: {
		us: '40 psi, where limits stop being looked for; on a fixed rail its set point, if that is less',
		metric: '2.76 bar, where limits stop being looked for; on a fixed rail its set point, if that is less',
	},
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		if (q.choice('boost.kind') === 'none') return null;
		const fixed = q.has('fuel.reference') && q.choice('fuel.reference') === 'atmosphere' && q.has('fuel.pressure');
		return fixed ? Math.min(boostRange.to, q.number('fuel.pressure')) : boostRange.to;
	},
});

export const forPowerGoal = limit({
	...boostLimitBase,
	id: 'boost.for_power_goal',
	label: 'boost for the power goal',
	formula: 'the boost at which the computed power meets the goal',
	limit: { ...varyingBoost, until: 'engine.power', reaches: 'build.power_goal', rising: true },
});

export const ringGap = limit({
	...boostLimitBase,
	id: 'engine.ring_gap_boost_limit',
	label: 'ring gap boost limit',
	formula: 'the boost at which the top ring needs more gap than it has',
	limit: { ...varyingBoost, until: 'engine.ring_gap_needed', reaches: 'engine.ring_gap', rising: true },
});

export const compressor = limit({
	...boostLimitBase,
	id: 'boost.compressor_boost_limit',
	label: 'compressor boost limit',
	formula: 'the boost at which the corrected flow reaches the choke flow, which is held as boost moves',
	limit: { ...varyingBoost, until: 'boost.compressor_flow_corrected', reaches: 'boost.compressor_choke', rising: true },
});

export const sensorTop = limit({
	...boostLimitBase,
	id: 'sensors.map_boost_limit',
	label: 'MAP sensor boost limit',
	formula: "the boost at which the manifold is 10 kPa under the pressure sensor's top",
	limit: { ...varyingBoost, until: 'sensors.map_margin', reaches: 0, rising: false },
});

/** Above this gasoline knocks at almost any advance: 80 degC, K. Common practice, 10 K either way. */
export const hottestCharge = assumption({
	id: 'boost.charge_temp_most',
	label: 'hottest charge air',
	kind: 'temperature',
	value: 353.15,
	spread: 10,
	formula: { us: 'usual hottest charge air, 176 degF', metric: 'usual hottest charge air, 80 degC' },
	source: ['practice'],
	nature: 'estimate',
});

export const chargeHeat = limit({
	...boostLimitBase,
	id: 'boost.charge_temp_boost_limit',
	label: 'charge temperature boost limit',
	formula: {
		us: 'the boost at which the charge air reaches 176 degF on the hottest day',
		metric: 'the boost at which the charge air reaches 80 degC on the hottest day',
	},
	limit: { ...varyingBoost, until: 'boost.charge_temp', reaches: 'boost.charge_temp_most', rising: true },
});

/** Limits known only from a compressor map, an open engine or the whole fuel line: the others do not wait for them. */
const optional = ['engine.ring_gap_boost_limit', 'boost.compressor_boost_limit', 'fuel.rail_boost_limit'] as const;

const required = [
	'injectors.boost_limit',
	'fuel.pump_spare_boost_limit',
	'sensors.meter_spare_boost_limit',
	'ignition.spare_boost_limit',
	'engine.head_boost_limit',
	'driveline.clutch_boost_limit',
	'driveline.gearbox_boost_limit',
	'engine.piston_boost_limit',
	'engine.gasket_boost_limit',
	'engine.rod_boost_limit',
	'engine.block_boost_limit',
	'sensors.map_boost_limit',
	'boost.charge_temp_boost_limit',
] as const;

/** Once knock was heard at the target the low end of the correlation's band counts; else its middle. */
const knock = { heard: 'engine.knock_boost_limit_low', unheard: 'engine.knock_boost_limit' } as const;

/** A limit that is not known could lie lower still, so it is asked for, unless a known one already lies under the target. */
export const lowestLimit = quantity({
	id: 'boost.lowest_limit',
	label: 'lowest boost limit',
	kind: 'pressure',
	inputs: ['boost.kind', 'boost.target', 'ignition.knock_seen', knock.heard, knock.unheard, ...required, ...optional],
	range: [boostRange.from, boostRange.to],
	formula:
		'the lowest boost limit of those worked out that applies here, with what pump, air meter and spark should have to spare; not known while one is not known and the others lie over the target, ring gap, compressor choke and rail sag excepted, which count where they are known; for knock the near end of its band once knock was heard at the target; compressor surge and wastegate creep are no ceilings of boost and have lines of their own',
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		if (q.choice('boost.kind') === 'none') return null;
		const heard = q.has('ignition.knock_seen') && q.choice('ignition.knock_seen') !== 'clean';
		const applying = [...required, heard ? knock.heard : knock.unheard].filter(id => q.applies(id));
		const known = [...applying, ...optional.filter(id => q.applies(id))]
			.filter(id => q.has(id))
			.map(id => q.number(id));
		if (known.some(limit => limit < q.number('boost.target'))) return Math.min(...known);
		return applying.length > 0 ? Math.min(...applying.map(id => q.number(id)), ...known) : null;
	},
});

/** Nothing in the sheet determines it: an audit works it out from fit and logs, and sets it. */
const fromLogs = {
	kind: 'pressure',
	inputs: [],
	source: ['definition'],
	nature: 'estimate',
	compute: () => null,
} as const;

export const nextStep = quantity({
	...fromLogs,
	id: 'boost.next_step',
	label: 'next step in boost',
	formula:
		'the highest boost that the last two clean pulls allow: a chance of at most 5 % that a limit of harm to engine or people is passed, at most 2 psi over them, at most the target; only from logs',
});

export const nextCut = quantity({
	...fromLogs,
	id: 'boost.next_cut',
	label: 'over-boost cut of the next step',
	formula: 'the next step in boost + 1 psi; only from logs',
});
