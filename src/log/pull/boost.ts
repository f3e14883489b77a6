import { numberOf } from '../car.ts';
import { lacking, type Measured, measured, notApplicable } from '../measured.ts';
import type { PullView } from '../pull.ts';
import { pullQuantity } from '../quantity.ts';
import { type Readings, within } from '../series.ts';
import { highest, runningMedian, timeAtTop } from '../statistics.ts';
import { atEnd, heldHigh, medianAround, whenSpeed } from './readings.ts';

/** Measures the boost of a pull; does not apply to an unboosted engine. */
function measureBoost(pull: PullView, measure: (boost: Readings) => Measured): Measured {
	if (pull.boosted === false) return notApplicable;
	const boost = pull.in('boost');
	return boost.time.length < 3 ? lacking('manifold_pressure') : measure(boost);
}

/** Pa; the sensor's error is a share of manifold pressure. */
const errorAt = ({ declared, ambient = 101_325 }: PullView, boost: number): number =>
	declared.sensor_error.manifold * (ambient + boost);

export const peak = pullQuantity({
	id: 'log.boost_peak',
	kind: 'pressure',
	sensor: 'manifold_pressure',
	worst: 'highest',
	range: [null, null],
	formula: 'highest running median of three readings of manifold pressure, less ambient',
	measure: pull =>
		measureBoost(pull, boost => {
			const value = highest(boost)?.value;
			return measured(value, errorAt(pull, value ?? 0), ['manifold_pressure']);
		}),
});

export const held = pullQuantity({
	id: 'log.boost_held',
	kind: 'pressure',
	sensor: 'manifold_pressure',
	range: [null, null],
	formula: 'the most boost that was held for 0.3 s and three readings',
	measure: pull =>
		measureBoost(pull, boost => {
			const value = heldHigh(pull, boost);
			return measured(value, errorAt(pull, value ?? 0), ['manifold_pressure']);
		}),
});

export const end = pullQuantity({
	id: 'log.boost_end',
	kind: 'pressure',
	sensor: 'manifold_pressure',
	range: [null, null],
	formula: 'median boost of the last 0.3 s of the part at full boost',
	measure: pull =>
		measureBoost(pull, () =>
			pull.full
				? atEnd(pull.in('boost', pull.full), 0.3, errorAt(pull, 0), 'manifold_pressure')
				: lacking('manifold_pressure'),
		),
});

export const spool = pullQuantity({
	id: 'log.spool_speed',
	kind: 'rotation',
	formula: 'engine speed at which boost first reaches 90 % of its peak',
	measure: pull =>
		measureBoost(pull, boost => {
			const smooth = runningMedian(boost);
			const top = highest(boost)!.value;
			const index = smooth.value.findIndex(one => one >= 0.9 * top);
			return measured(pull.speedAt(smooth.time[index]!), 0);
		}),
});

/** The change of boost over the last `span` rpm before `finish`, Pa; from a time on at which boost had reached its target. */
function lateChange(
	pull: PullView,
	span: number,
	finish: number,
	from: (boost: Readings) => number | undefined,
): Measured {
	if (!pull.full) return lacking('manifold_pressure');
	const settled = from(pull.in('boost'));
	const [begin] = pull.full;
	// The middle of the last 0.3 s: a quick engine turns 100 rpm faster by the lift itself.
	const last = finish - 0.15;
	const start = whenSpeed(pull, pull.speedAt(last) - span, [begin, last]);
	if (settled === undefined || start === undefined) return lacking('pull');
	const boost = pull.in('boost', [begin, finish]);
	const [before, after] = [medianAround(boost, Math.max(start, settled, begin + 0.15)), medianAround(boost, last)];
	if (before === undefined || after === undefined) return lacking('manifold_pressure');
	// The same sensor twice: what it is off cancels but for its share of the change.
	return measured(after - before, Math.abs(after - before) * pull.declared.sensor_error.manifold + 300);
}

export const riseLate = pullQuantity({
	id: 'log.boost_rise_late',
	kind: 'pressure',
	range: [null, null],
	formula:
		'boost at the end less boost 1500 rpm earlier, and not earlier than half a second after boost first came to the spring (or the target, the lower)',
	measure: pull =>
		measureBoost(pull, () =>
			lateChange(pull, 1500, pull.full?.[1] ?? pull.end, boost => {
				const opens = Math.min(
					numberOf(pull.car, 'boost.spring') ?? Infinity,
					numberOf(pull.car, 'boost.target') ?? Infinity,
				);
				if (!Number.isFinite(opens)) return undefined;
				const smooth = runningMedian(boost);
				const index = smooth.value.findIndex(one => one >= 0.95 * opens);
				return index < 0 ? undefined : smooth.time[index]! + 0.5;
			}),
		),
});

export const fallLate = pullQuantity({
	id: 'log.boost_fall_late',
	kind: 'pressure',
	range: [null, null],
	formula: 'boost 1000 rpm before the lift (or a limiter) less boost at it: a fall is positive',
	measure: pull => {
		const change = measureBoost(pull, () => lateChange(pull, 1000, pull.end, () => pull.full![0]));
		if (typeof change.value !== 'number') return change;
		return { ...change, value: -change.value, low: -change.high!, high: -change.low! };
	},
});

export const flat = pullQuantity({
	id: 'log.pressure_flat_time',
	kind: 'time',
	formula: 'longest time at the highest reading of manifold pressure, which is over ambient + 5 kPa',
	measure: pull =>
		measureBoost(pull, boost => {
			const top = Math.max(...boost.value);
			return top < 5000 ? measured(0) : measured(timeAtTop(boost, top));
		}),
});

export const manifoldHighest = pullQuantity({
	id: 'log.manifold_highest',
	kind: 'absolute-pressure',
	sensor: 'manifold_pressure',
	unit: 'Pa',
	formula: 'highest running median of three readings of manifold pressure',
	measure: pull => {
		const top = highest(pull.in('manifold_pressure'))?.value;
		return measured(top, (top ?? 0) * pull.declared.sensor_error.manifold, ['manifold_pressure']);
	},
});

export const speedAtPeak = pullQuantity({
	id: 'log.boost_peak_speed',
	kind: 'rotation',
	formula: 'engine speed at the highest boost',
	measure: pull =>
		measureBoost(pull, boost => {
			const at = highest(boost);
			return measured(at && pull.speedAt(at.time), 0, ['manifold_pressure']);
		}),
});

/** Boost at a time, Pa gauge: 0 unboosted, undefined where it is not logged. */
export function boostAt(pull: PullView, time: number): number | undefined {
	if (pull.boosted === false) return 0;
	const { value } = within(pull.of('boost'), time - 0.5, time);
	return value.at(-1);
}
