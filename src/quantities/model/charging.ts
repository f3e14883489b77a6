import { daysToFlat, stateOfCharge } from '../../physics/battery.ts';
import { percent, quantity } from '../quantity.ts';

type Load = readonly [name: string, amps: number];

export const loads = quantity({
	id: 'charging.load_total',
	label: 'total electrical load',
	kind: 'current',
	inputs: ['charging.loads'],
	formula: 'sum of the loads',
	source: ['definition'],
	nature: 'exact',
	compute: q => q.list<Load>('charging.loads')?.reduce((sum, [, amps]) => sum + amps, 0),
});

export const balance = quantity({
	id: 'charging.balance',
	label: 'current balance, cruising',
	kind: 'current',
	inputs: ['charging.alternator', 'charging.load_total'],
	range: [null, null],
	formula: 'hot output - sum of loads',
	source: ['practice'],
	nature: 'estimate',
	compute: q => q.number('charging.alternator') - q.number('charging.load_total'),
});

/** Output of an alternator at idle, as a share of its hot output. Common practice. */
const idleShare = 0.5;

export const balanceIdle = quantity({
	id: 'charging.balance_idle',
	label: 'current balance at idle',
	kind: 'current',
	inputs: ['charging.alternator', 'charging.load_total'],
	range: [null, null],
	formula: 'half of the hot output - sum of loads',
	source: ['practice'],
	nature: 'estimate',
	compute: q => idleShare * q.number('charging.alternator') - q.number('charging.load_total'),
});

export const flat = quantity({
	id: 'harness.days_to_flat',
	label: 'days to a flat battery',
	kind: 'days',
	inputs: ['charging.battery_capacity', 'harness.key_off_draw'],
	formula: 'usable half of the battery / key-off draw; no draw: never',
	source: ['practice'],
	nature: 'exact',
	compute: q => {
		const [charge, draw] = [q.number('charging.battery_capacity'), q.number('harness.key_off_draw')];
		return draw === 0 ? null : daysToFlat(charge, draw);
	},
});

export const charge = quantity({
	id: 'charging.state_of_charge',
	label: 'battery state of charge',
	shown: percent,
	kind: 'ratio',
	inputs: ['charging.battery_rest'],
	range: [0, 1],
	formula: 'table of rested volts',
	source: ['battery-table'],
	nature: 'estimate',
	compute: q => stateOfCharge(q.number('charging.battery_rest')),
});
