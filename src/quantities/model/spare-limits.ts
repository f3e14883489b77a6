import { limit, quantity } from '../quantity.ts';
import { boostLimitBase, varyingBoost } from './limit-ranges.ts';

// Boost limits that leave the margin which rules ask for: a rule fails there, before the part itself gives out. A test holds
// these margins and those of the rules together.

export const pump = limit({
	...boostLimitBase,
	id: 'fuel.pump_spare_boost_limit',
	label: 'pump boost limit with 15 % to spare',
	formula: 'the boost at which the pump margin is down to 15 %',
	limit: { ...varyingBoost, until: 'fuel.pump_margin', reaches: 0.15, rising: false },
});

export const meter = limit({
	...boostLimitBase,
	id: 'sensors.meter_spare_boost_limit',
	label: 'air meter boost limit with 5 % to spare',
	formula: "the boost at which the meter's headroom is down to 5 %",
	limit: { ...varyingBoost, until: 'sensors.meter_headroom', reaches: 0.05, rising: false },
});

export const spark = limit({
	...boostLimitBase,
	id: 'ignition.spare_boost_limit',
	label: 'spark boost limit with 5 % to spare',
	formula: 'the boost at which the spark margin is down to 5 %',
	limit: { ...varyingBoost, until: 'ignition.spark_margin', reaches: 0.05, rising: false },
});

/** Lost in a long thin line to a returnless rail, or because the pump falls behind. */
export const railSag = quantity({
	id: 'fuel.rail_sag',
	label: 'rail pressure lost under flow',
	kind: 'pressure',
	inputs: ['fuel.rail_set_point', 'fuel.rail_pressure_under_flow'],
	formula: 'set point of the rail - rail pressure under flow',
	source: ['definition'],
	nature: 'estimate',
	compute: q => Math.max(0, q.number('fuel.rail_set_point') - q.number('fuel.rail_pressure_under_flow')),
});

/** Pa, 4 psi. Common practice. */
const maxRailSag = 27579;

export const rail = limit({
	...boostLimitBase,
	id: 'fuel.rail_boost_limit',
	label: 'rail pressure boost limit',
	formula: {
		us: 'the boost at which the rail is 4 psi under its set point',
		metric: 'the boost at which the rail is 0.28 bar under its set point',
	},
	limit: { ...varyingBoost, until: 'fuel.rail_sag', reaches: maxRailSag, rising: true },
});
