import { type Chunk, concatenated } from '../chunk.ts';
import { measured } from '../measured.ts';
import type { Accumulator } from '../quantity.ts';
import { mapped, type Readings, within } from '../series.ts';
import { median, sustained } from '../statistics.ts';

/**
 * The most that was held for so many seconds of the time that counts, by medians of a twelfth of that: gaps between
 * stretches are taken out, so that a minute in town traffic is a minute. Goes on from chunk to chunk.
 */
export function heldFor(
	seconds: number,
	readings: number,
	pick: (chunk: Chunk) => Readings,
	error: (value: number, chunk: Chunk) => number,
	channels: readonly string[],
	sign: 1 | -1 = 1,
): Accumulator {
	let [best, tail, last]: [number | undefined, Readings, Chunk | undefined] = [undefined, concatenated([]), undefined];
	return {
		take(chunk) {
			last = chunk;
			const picked = pick(chunk);
			const found = sign === 1 ? picked : mapped(picked, value => -value);
			const start = tail.time.at(-1) ?? 0;
			const closed = closeGaps(found, start, tail.time.length > 0);
			const all = concatenated([tail, closed]);
			const least = best ?? Number.NEGATIVE_INFINITY;
			const held = sustained(mediansOf(all, seconds / 12, least), seconds * (11 / 12), readings);
			if (held !== undefined && held > least) best = held;
			const end = all.time.at(-1) ?? 0;
			tail = within(all, end - seconds - 5, end);
		},
		result: () => {
			const value = best === undefined ? undefined : sign * best;
			return measured(value, value === undefined ? 0 : error(value, last!), channels);
		},
	};
}

/**
 * The median of every so many seconds, at the last reading of each. Those that are not over `least` are minus infinity: they
 * cannot be more than what was found, and half the readings of most show that without sorting them.
 */
function mediansOf({ time, value }: Readings, seconds: number, least: number): Readings {
	const times = new Float64Array(time.length);
	const values = new Float64Array(time.length);
	let count = 0;
	for (let first = 0; first < time.length; ) {
		let end = first;
		let over = 0;
		do {
			if (value[end]! > least) over++;
			end++;
		} while (end < time.length && time[end]! - time[first]! < seconds);
		times[count] = time[end - 1]!;
		values[count++] = 2 * over < end - first ? Number.NEGATIVE_INFINITY : median(value.subarray(first, end));
		first = end;
	}
	return { time: times.subarray(0, count), value: values.subarray(0, count) };
}

/** The same readings on a clock on which no two are more than two seconds apart. */
function closeGaps({ time, value }: Readings, start: number, follows: boolean): Readings {
	const closed = new Float64Array(time.length);
	let now = start + (follows ? 1 : 0);
	for (let index = 0; index < closed.length; index++) {
		if (index > 0) now += Math.min(2, time[index]! - time[index - 1]!);
		closed[index] = now;
	}
	return { time: closed, value };
}
