import { limit, quantity } from '../quantity.ts';
import { byBoost, ofBoost } from './ranges.ts';

// Rules want some of these to spare. Where that is used up they fail, under the limit of the part itself; a test holds what
// is spare here and in the rules together.

export const pump = limit({
	...ofBoost,
	id: 'fuel.pump_spare_boost_limit',
	label: 'pump boost limit with 15 % to spare',
	formula: 'the boost at which the pump margin is down to 15 %',
	limit: { ...byBoost, until: 'fuel.pump_margin', reaches: 0.15, rising: false },
});

export const meter = limit({
	...ofBoost,
	id: 'sensors.meter_spare_boost_limit',
	label: 'air meter boost limit with 5 % to spare',
	formula: "the boost at which the meter's headroom is down to 5 %",
	limit: { ...byBoost, until: 'sensors.meter_headroom', reaches: 0.05, rising: false },
});

export const spark = limit({
	...ofBoost,
	id: 'ignition.spare_boost_limit',
	label: 'spark boost limit with 5 % to spare',
	formula: 'the boost at which the spark margin is down to 5 %',
	limit: { ...byBoost, until: 'ignition.spark_margin', reaches: 0.05, rising: false },
});

/** What a long thin line of a returnless rail loses on the way, or a pump that falls behind. */
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

/** 4 psi, Pa. Common practice. */
const mostSag = 27579;

export const rail = limit({
	...ofBoost,
	id: 'fuel.rail_boost_limit',
	label: 'rail pressure boost limit',
	formula: {
		us: 'the boost at which the rail is 4 psi under its set point',
		metric: 'the boost at which the rail is 0.28 bar under its set point',
	},
	limit: { ...byBoost, until: 'fuel.rail_sag', reaches: mostSag, rising: true },
});
