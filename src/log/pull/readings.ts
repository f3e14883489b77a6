import { lacking, type Measured, measured } from '../measured.ts';
import type { Interval, PullView } from '../pull.ts';
import { firstFrom, type Readings, within } from '../series.ts';
import { median, medianError, sustained, sustainedLow } from '../statistics.ts';

/** Measures a channel in the part at full; lacks the channel, or what would show that part. */
export function inFull(
	pull: PullView,
	id: string,
	measure: (readings: Readings, full: Interval) => Measured,
): Measured {
	if (pull.of(id).time.length === 0) return lacking(id);
	if (!pull.full) return lacking(...(pull.boosted === false ? [] : ['manifold_pressure']));
	return measure(pull.in(id, pull.full), pull.full);
}

/** The median of the last seconds of some readings, of three at least, with its deviation. */
export function atEnd({ time, value }: Readings, seconds: number, error: number, ...missing: string[]): Measured {
	const last = lastOf({ time, value }, seconds);
	if (last.length < 3) return lacking(...missing);
	return measured(median(last), Math.hypot(error, medianError(last)));
}

/** The values of the last seconds; of three readings at least where there are as many within a second. */
export function lastOf({ time, value }: Readings, seconds: number): Float64Array {
	const end = time.at(-1) ?? 0;
	const first = Math.min(firstFrom(time, end - seconds), Math.max(0, time.length - 3));
	return time.length > 0 && end - time[first]! <= Math.max(seconds, 1) ? value.subarray(first) : value.subarray(0, 0);
}

/** The most that was held, by `sustained` of rules/episodes.yaml. */
export const heldHigh = ({ declared }: PullView, readings: Readings): number | undefined =>
	sustained(readings, declared.sustained.time, declared.sustained.readings);

/** The least that was held, by the same. */
export const heldLow = ({ declared }: PullView, readings: Readings): number | undefined =>
	sustainedLow(readings, declared.sustained.time, declared.sustained.readings);

/** The first time at which engine speed is at or over a figure within an interval; undefined where it never is. */
export function whenSpeed(pull: PullView, speed: number, interval: Interval): number | undefined {
	const { time, value } = pull.in('engine_speed', interval);
	const index = value.findIndex(one => one >= speed);
	return index < 0 ? undefined : time[index]!;
}

/** A list of [rpm, median] every 500 rpm, each of the values within 250 rpm of it; of three values at least. */
export function mediansBySpeed(points: readonly (readonly [speed: number, value: number])[]): [number, number][] {
	const bins = new Map<number, number[]>();
	for (const [speed, value] of points) {
		const bin = 500 * Math.round(speed / 500);
		const values = bins.get(bin);
		if (values) values.push(value);
		else bins.set(bin, [value]);
	}
	return [...bins]
		.filter(([, values]) => values.length >= 3)
		.sort(([a], [b]) => a - b)
		.map(([speed, values]) => [speed, median(values)]);
}

/** The median about a time, of `seconds` in all; undefined of fewer than two readings. */
export function medianAround(readings: Readings, time: number, seconds = 0.3): number | undefined {
	const { value } = within(readings, time - seconds / 2, time + seconds / 2);
	return value.length < 2 ? undefined : median(value);
}
