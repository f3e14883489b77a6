import { numberOf } from '../car.ts';
import { exactly, lacking, type Measured, measured } from '../measured.ts';
import type { Interval, PullView } from '../pull.ts';
import { pullQuantity } from '../quantity.ts';
import { known, type Readings, within } from '../series.ts';
import { highest, lowest, runningMedian } from '../statistics.ts';
import { heldAtEach } from '../ticks.ts';
import { heldHigh } from './readings.ts';

const banks = ['lambda_1', 'lambda_2'] as const;

/**
 * Steps of the lag by which the sensor may show the lift too early: the lag is found in steps, and is that of the middle of a
 * change. Without them one sound drive in 24 was called lean.
 */
const earlySteps = 2;

/** The part at full, and as long after the lift as the sensor is late, for it still shows what burned before. */
function sensedInterval({ full, whole, declared, lag = 0 }: PullView): Interval | undefined {
	return (
		full && [
			full[0],
			full[1] >= whole[1] - 1e-6 ? full[1] + Math.max(0, lag - earlySteps * declared.lag.step) : full[1],
		]
	);
}

/** The extreme running median of three over the banks that are logged. */
function extremeOfBanks(
	pull: PullView,
	interval: Interval | undefined,
	extreme: typeof highest,
	pick: (a: number, b: number) => number,
): Measured {
	const logged = banks.filter(bank => pull.of(bank).time.length > 0);
	if (logged.length === 0) return lacking('lambda_1');
	if (!interval) return lacking('manifold_pressure');
	const found = logged.flatMap(bank => extreme(pull.in(bank, interval))?.value ?? []);
	return found.length < logged.length
		? lacking('lambda_1')
		: measured(
				found.reduce((a, b) => pick(a, b)),
				pull.declared.sensor_error.lambda,
				['lambda_1'],
			);
}

export const leanest = pullQuantity({
	id: 'log.lambda_leanest',
	kind: 'ratio',
	sensor: 'lambda',
	worst: 'highest',
	formula:
		'highest running median of three readings at full and up to the lag, less two steps in finding it, after the lift, never shifted; the leaner bank',
	measure: pull => extremeOfBanks(pull, sensedInterval(pull), highest, Math.max),
});

export const settled = pullQuantity({
	id: 'log.lambda_leanest_settled',
	kind: 'ratio',
	sensor: 'lambda',
	formula:
		'the same, from the lag after full began: what the sensor shows before that was burned while boost was still building',
	measure: pull => {
		const interval = sensedInterval(pull);
		return extremeOfBanks(pull, interval && [interval[0] + (pull.lag ?? 0), interval[1]], highest, Math.max);
	},
});

export const richest = pullQuantity({
	id: 'log.lambda_richest',
	kind: 'ratio',
	sensor: 'lambda',
	formula: 'lowest running median of three readings at full; the richer bank',
	measure: pull => extremeOfBanks(pull, pull.full, lowest, Math.min),
});

export const building = pullQuantity({
	id: 'log.lambda_leanest_building',
	kind: 'ratio',
	sensor: 'lambda',
	formula:
		'highest running median of three readings from 0.5 s after demand until boost is at full, both as late as the sensor is; the leaner bank. Of a pull in which nothing builds, that at full',
	measure: pull => {
		// Nothing builds: full is all there is.
		if (pull.boosted === false) return extremeOfBanks(pull, sensedInterval(pull), highest, Math.max);
		if (!pull.full) return lacking('manifold_pressure');
		const from = pull.whole[0] + pull.declared.full.after + (pull.lag ?? 0);
		const found = extremeOfBanks(pull, [from, pull.full[0] + (pull.lag ?? 0)], highest, Math.max);
		// Boost that is full before the sensor can show anything has no building part either.
		const short = found.value === undefined && pull.full[0] - from < 0.5;
		return short ? extremeOfBanks(pull, sensedInterval(pull), highest, Math.max) : found;
	},
});

/** What an engine without boost is usually set to at full load; common practice. */
const usualTarget = 0.9;

export const target = pullQuantity({
	id: 'log.lambda_meant',
	kind: 'ratio',
	formula:
		"the leanest that the controller's own target was at full, where it is logged; else the sheet's; unboosted 0.90, the usual",
	measure: pull => {
		const logged = pull.in('lambda_target', pull.full);
		if (logged.time.length === 0) {
			const sheet = numberOf(pull.car, 'boost.lambda') ?? (pull.boosted === false ? usualTarget : undefined);
			return measured(sheet, 0, ['boost.lambda']);
		}
		return measured(Math.max(...logged.value), 0);
	},
});

export const difference = pullQuantity({
	id: 'log.bank_lambda_difference',
	kind: 'ratio',
	formula: 'most that the banks lay apart for 0.3 s and three readings, at full',
	measure: pull => {
		if (pull.of('lambda_2').time.length === 0) return lacking('lambda_2');
		if (!pull.full) return lacking('manifold_pressure');
		const one = runningMedian(pull.in('lambda_1', pull.full));
		const other = runningMedian(pull.in('lambda_2', pull.full));
		const atSameTime = heldAtEach(other, one.time, 1);
		const apart: Readings = {
			time: one.time,
			value: one.value.map((value, index) => Math.abs(value - atSameTime[index]!)),
		};
		return measured(heldHigh(pull, known(apart)), Math.SQRT2 * pull.declared.sensor_error.lambda_apart, [
			'lambda_1',
			'lambda_2',
		]);
	},
});

/** s after the lift within which a sensor that works has moved. */
const responseTime = 2;

export const proved = pullQuantity({
	id: 'log.lambda_proved',
	kind: 'yes-no',
	formula:
		'yes where every lambda logged moves 0.1 from demand to 2 s after the lift and does not stand at an end of its range; else not known',
	measure: pull => {
		const logged = banks.filter(bank => pull.of(bank).time.length > 0);
		if (logged.length === 0) return lacking('lambda_1');
		const [from, to] = pull.whole;
		return exactly(
			logged.every(bank => isResponding(pull, pull.in(bank, [from, to + responseTime]))) ? true : undefined,
			'lambda_1',
		);
	},
});

/** Whether a sensor moves, and its readings at full are not all at one end of its range. */
function isResponding(pull: PullView, { value, time }: Readings): boolean {
	if (value.length < 4) return false;
	const [least, most] = [Math.min(...value), Math.max(...value)];
	if (most - least < 0.1) return false;
	if (!pull.full) return true;
	const { value: full } = within({ time, value }, ...pull.full);
	const same = full.filter(one => one === full[0]).length;
	return full.length < 5 || same < 0.9 * full.length || (full[0] !== least && full[0] !== most);
}
