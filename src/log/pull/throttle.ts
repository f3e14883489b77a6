import { percent } from '../../quantities/quantity.ts';
import { exactly, lacking, measured } from '../measured.ts';
import { pullQuantity } from '../quantity.ts';
import { voltsError } from '../sensor-errors.ts';
import { secondHighest } from '../statistics.ts';
import { heldHigh } from './readings.ts';

export const widest = pullQuantity({
	id: 'log.throttle_widest',
	kind: 'ratio',
	shown: percent,
	formula: 'the widest throttle that was held for 0.3 s and three readings',
	measure: pull => measured(heldHigh(pull, pull.in('throttle')), 0, ['throttle']),
});

export const volts = pullQuantity({
	id: 'log.throttle_volts_open',
	kind: 'voltage',
	sensor: 'throttle_volts',
	worst: 'highest',
	formula: 'the highest volts of the throttle sensor that were held for 0.3 s and three readings',
	measure: pull => {
		const value = heldHigh(pull, pull.in('throttle_volts'));
		return measured(value, voltsError(pull.declared, value ?? 0), ['throttle_volts']);
	},
});

export const fastest = pullQuantity({
	id: 'log.speed_highest',
	kind: 'rotation',
	formula: 'the second highest reading of engine speed, to a second after the lift: one reading decides nothing',
	measure: pull => {
		const [from, to] = pull.whole;
		return measured(secondHighest(pull.in('engine_speed', [from, to + 1]).value), 0, ['engine_speed']);
	},
});

export const fullTo = pullQuantity({
	id: 'log.full_to_speed',
	kind: 'rotation',
	formula: 'engine speed at the end of the part at full',
	measure: pull => {
		if (!pull.full) return lacking(...(pull.boosted === false ? ['pull'] : ['manifold_pressure']));
		return measured(pull.speedAt(pull.full[1]), 0, ['engine_speed']);
	},
});

export const warm = pullQuantity({
	id: 'log.pull_warm',
	kind: 'yes-no',
	formula:
		'yes where the engine was warm at the first demand: coolant over 75 degC and 10 min running, or over 82 degC',
	measure: ({ episode }) => exactly(episode.warm),
});
