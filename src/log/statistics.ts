import type { Readings } from './series.ts';

/** The least of some values and of one more. A loop a function: the engine has little to optimize, and it is done at once. */
export function minOf(values: Float64Array, least: number): number {
	for (let index = 0; index < values.length; index++) if (values[index]! < least) least = values[index]!;
	return least;
}

/** The most of some values and of one more. */
export function maxOf(values: Float64Array, most: number): number {
	for (let index = 0; index < values.length; index++) if (values[index]! > most) most = values[index]!;
	return most;
}

/** A percentile by linear interpolation between ranks; `share` is 0 to 1. NaN of nothing. */
export function percentile(values: ArrayLike<number>, share: number): number {
	const { length } = values;
	if (length === 0) return Number.NaN;
	return sortedPercentile(length <= few.length ? sortFew(values) : new Float64Array(values).sort(), share, length);
}

/** The same of values that rise: of the first `length` of them. */
export function sortedPercentile(sorted: Float64Array, share: number, length: number = sorted.length): number {
	if (length === 0) return Number.NaN;
	const rank = share * (length - 1);
	const below = Math.floor(rank);
	const [low, high] = [sorted[below]!, sorted[Math.min(below + 1, length - 1)]!];
	return low + (high - low) * (rank - below);
}

/** Reused each time: most lists are the readings of a second, and there are many. */
const few = new Float64Array(32);

/** By insertion. What is no number goes last, as the language sorts. */
function sortFew(values: ArrayLike<number>): Float64Array {
	for (let index = 0; index < values.length; index++) {
		const value = values[index]!;
		let place = index;
		if (!Number.isNaN(value)) for (; place > 0 && !(few[place - 1]! <= value); place--) few[place] = few[place - 1]!;
		few[place] = value;
	}
	return few;
}

/**
 * A percentile of readings by the time that each stands, so that a value that was written coarsely, and repeats, counts as
 * long as one that was not. A reading stands until the next, `most` s at the longest.
 */
export function timedPercentiles({ time, value }: Readings, shares: readonly number[], most: number): number[] {
	const order = Array.from(value.keys()).sort((a, b) => value[a]! - value[b]!);
	const stood = (at: number) => Math.min(most, at + 1 < time.length ? time[at + 1]! - time[at]! : most);
	const whole = order.reduce((sum, at) => sum + stood(at), 0);
	return shares.map(share => {
		let passed = 0;
		for (const at of order) {
			passed += stood(at);
			if (passed >= share * whole) return value[at]!;
		}
		return Number.NaN;
	});
}

export const median = (values: ArrayLike<number>): number => percentile(values, 0.5);

/** Median absolute deviation of normal readings to their standard deviation: 1 / 0.6745, the normal quantile of 3/4. */
export const deviationFromMad = 1.4826;

/**
 * Standard error of a median of independent readings: 1.2533 s / sqrt(n), s from the median absolute deviation
 * (MAD), so that a few wild readings do not count.
 */
export function medianError(values: ArrayLike<number>): number {
	if (values.length < 2) return 0;
	const middle = median(values);
	const deviation = deviationFromMad * median(Array.from(values, value => Math.abs(value - middle)));
	return (1.2533 * deviation) / Math.sqrt(values.length);
}

/** Each reading replaced by the median of itself and its neighbors; the two ends are left out. */
export function runningMedian({ time, value }: Readings): Readings {
	const length = Math.max(0, value.length - 2);
	const smooth = new Float64Array(length);
	for (let index = 0; index < length; index++)
		smooth[index] = medianOfThree(value[index]!, value[index + 1]!, value[index + 2]!);
	return { time: time.subarray(1, 1 + length), value: smooth };
}

const medianOfThree = (a: number, b: number, c: number): number =>
	Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));

/** The highest running median of three readings, undefined of fewer; `time` is when. One reading decides nothing. */
export function highest(readings: Readings): { value: number; time: number } | undefined {
	const smooth = runningMedian(readings);
	let best = -1;
	for (let index = 0; index < smooth.value.length; index++)
		if (best < 0 || smooth.value[index]! > smooth.value[best]!) best = index;
	return best < 0 ? undefined : { value: smooth.value[best]!, time: smooth.time[best]! };
}

/** The lowest running median of three readings, as `highest`. */
export function lowest(readings: Readings): { value: number; time: number } | undefined {
	const found = highest({ time: readings.time, value: readings.value.map(value => -value) });
	return found && { value: -found.value, time: found.time };
}

/**
 * The highest value that was held: the most that all readings of some stretch of `seconds` and `count` readings reach.
 * Undefined where there is no such stretch.
 */
export function sustained({ time, value }: Readings, seconds: number, count: number): number | undefined {
	let best: number | undefined;
	// Candidates for the least of the window, rising; a monotone queue, so that a long run costs its length once.
	const queue: number[] = [];
	let head = 0;
	let start = 0;
	for (let end = 0; end < time.length; end++) {
		while (queue.length > head && value[queue.at(-1)!]! >= value[end]!) queue.pop();
		queue.push(end);
		while (start < end && time[end]! - time[start + 1]! >= seconds - 1e-9 && end - start >= count) start++;
		while (queue[head]! < start) head++;
		if (time[end]! - time[start]! < seconds - 1e-9 || end - start + 1 < count) continue;
		const least = value[queue[head]!]!;
		if (best === undefined || least > best) best = least;
	}
	return best;
}

/** The lowest value that was held, as `sustained`. */
export function sustainedLow(readings: Readings, seconds: number, count: number): number | undefined {
	const found = sustained({ time: readings.time, value: readings.value.map(value => -value) }, seconds, count);
	return found === undefined ? undefined : -found;
}

/** The second highest value; undefined of fewer than two. */
export function secondHighest(values: ArrayLike<number>): number | undefined {
	return values.length < 2 ? undefined : new Float64Array(values).sort().at(-2);
}

/** The longest time, s, that readings stay within half a step of `top`, their highest. */
export function timeAtTop({ time, value }: Readings, top: number): number {
	const near = top - Math.max(stepOf(value) / 2, Math.abs(top) * 1e-9);
	let [longest, since] = [0, Number.NaN];
	for (let index = 0; index < time.length; index++) {
		if (value[index]! < near) since = Number.NaN;
		else {
			if (Number.isNaN(since)) since = time[index]!;
			longest = Math.max(longest, time[index]! - since);
		}
	}
	return longest;
}

/** The smallest step between two different values: how finely a channel was written. 0 of fewer than two values. */
function stepOf(values: ArrayLike<number>): number {
	const sorted = new Float64Array(values).sort();
	let step = Number.POSITIVE_INFINITY;
	for (let index = 1; index < sorted.length; index++) {
		const by = sorted[index]! - sorted[index - 1]!;
		if (by > 1e-9 * Math.abs(sorted[index]!)) step = Math.min(step, by);
	}
	return Number.isFinite(step) ? step : 0;
}
