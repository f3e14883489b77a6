import { lacking, type Measured, measured } from '../measured.ts';
import type { PullView } from '../pull.ts';
import { pullQuantity } from '../quantity.ts';
import { heldAt, type Readings } from '../series.ts';
import { median, secondHighest } from '../statistics.ts';
import { inFull } from './readings.ts';

/** Advance taken out for knock in the pull, deg, positive. */
function ofKnock(pull: PullView, measure: (retard: Readings) => Measured): Measured {
	const retard = pull.in('knock_retard');
	return retard.time.length < 2 ? lacking('knock_retard') : measure(retard);
}

export const most = pullQuantity({
	id: 'log.knock_most',
	kind: 'angle',
	formula: 'the most advance taken out for knock in the pull',
	measure: pull => ofKnock(pull, ({ value }) => measured(Math.max(...value))),
});

export const second = pullQuantity({
	id: 'log.knock_second',
	kind: 'angle',
	formula: 'the second highest reading of advance taken out for knock: one reading decides nothing',
	measure: pull => ofKnock(pull, ({ value }) => measured(secondHighest(value))),
});

export const atSpeed = pullQuantity({
	id: 'log.knock_at_speed',
	kind: 'rotation',
	formula: 'engine speed at the most knock',
	measure: pull =>
		ofKnock(pull, ({ time, value }) => {
			const top = Math.max(...value);
			return top > 0 ? measured(pull.speedAt(time[value.indexOf(top)]!)) : lacking('pull');
		}),
});

export const advanceAtKnock = pullQuantity({
	id: 'log.advance_at_knock',
	kind: 'angle',
	range: [null, null],
	formula: 'spark advance at the most knock',
	measure: pull =>
		ofKnock(pull, ({ time, value }) => {
			const top = Math.max(...value);
			if (top === 0) return lacking('pull');
			return measured(heldAt(pull.of('spark_advance'), time[value.indexOf(top)]!), 0, ['spark_advance']);
		}),
});

export const advance = pullQuantity({
	id: 'log.advance_full',
	kind: 'angle',
	range: [null, null],
	formula: 'median spark advance at full',
	measure: pull =>
		inFull(pull, 'spark_advance', ({ value }) =>
			value.length < 3 ? lacking('spark_advance') : measured(median(value), 0.5),
		),
});
