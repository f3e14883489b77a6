import type { Chunk } from '../chunk.ts';
import { lacking, type Measured, measured } from '../measured.ts';
import type { Accumulator } from '../quantity.ts';
import type { Readings } from '../series.ts';
import { median, medianError } from '../statistics.ts';
import { Summary } from '../summary.ts';

/** s; a reading counts for no more time than this. */
const maxHold = 2;

/**
 * The median of the readings that `pick` finds in each chunk. Not known of fewer readings or less time than asked.
 * `error` is the sensor's standard deviation at a value.
 */
export function medianOf(
	pick: (chunk: Chunk) => readonly Readings[],
	error: (value: number, chunk: Chunk) => number,
	channels: readonly string[],
	least: { readonly readings: number; readonly seconds: number } = { readings: 3, seconds: 0 },
): Accumulator {
	const all = new Summary();
	let seconds = 0;
	let last: Chunk | undefined;
	return {
		take(chunk) {
			last = chunk;
			for (const { time, value } of pick(chunk)) {
				for (let index = 0; index < value.length; index++) {
					all.take(value[index]!);
					if (index > 0) seconds += Math.min(maxHold, time[index]! - time[index - 1]!);
				}
			}
		},
		result(): Measured {
			if (!last || all.count < least.readings || seconds < least.seconds - 1e-9) return lacking(...channels);
			const value = median(all.values);
			return measured(value, Math.hypot(error(value, last), medianError(all.values)));
		},
	};
}
