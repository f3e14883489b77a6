/** Readings of one channel in a stretch of time, oldest first. Both arrays are of one length. */
export interface Readings {
	/** s since the first row. */
	readonly time: Float64Array;
	readonly value: Float64Array;
}

export const noReadings: Readings = { time: new Float64Array(0), value: new Float64Array(0) };

/** The new readings of one channel, as they come. */
export class Series {
	private times = new Float64Array(256);
	private values = new Float64Array(256);
	private view: Readings | null = null;
	length = 0;

	push(time: number, value: number): void {
		this.reserve(1);
		this.times[this.length] = time;
		this.values[this.length++] = value;
	}

	/** Takes readings as they are. */
	pushAll(time: Float64Array, value: Float64Array): void {
		this.reserve(time.length);
		this.times.set(time, this.length);
		this.values.set(value, this.length);
		this.length += time.length;
	}

	private reserve(more: number): void {
		this.view = null;
		while (this.length + more > this.times.length) {
			this.times = grown(this.times);
			this.values = grown(this.values);
		}
	}

	/** All there is now; a view, good until the next push, and the same one until then: it is asked for at every reading. */
	get all(): Readings {
		this.view ??= { time: this.times.subarray(0, this.length), value: this.values.subarray(0, this.length) };
		return this.view;
	}

	/** Forgets what is older. */
	dropBefore(time: number): void {
		const first = firstFrom(this.all.time, time);
		this.times.copyWithin(0, first, this.length);
		this.values.copyWithin(0, first, this.length);
		this.length -= first;
		this.view = null;
	}
}

function grown(array: Float64Array<ArrayBuffer>): Float64Array<ArrayBuffer> {
	const larger = new Float64Array(array.length * 2);
	larger.set(array);
	return larger;
}

/** The index of the first time at or after `at`. */
export function firstFrom(time: Float64Array, at: number): number {
	let [low, high] = [0, time.length];
	while (low < high) {
		const middle = (low + high) >> 1;
		if (time[middle]! < at) low = middle + 1;
		else high = middle;
	}
	return low;
}

/** The readings from `from` to `to`, both included; a view. */
export function within({ time, value }: Readings, from: number, to: number): Readings {
	const first = firstFrom(time, from);
	const end = Math.max(first, firstFrom(time, to + 1e-9));
	return { time: time.subarray(first, end), value: value.subarray(first, end) };
}

/** The reading that holds at a time: the last one at or before it, if it is no older than `stale` s; else NaN. */
export function heldAt({ time, value }: Readings, at: number, stale = 5): number {
	const index = firstFrom(time, at + 1e-9) - 1;
	return index >= 0 && at - time[index]! <= stale ? value[index]! : Number.NaN;
}

/** The readings at whose index something holds; a copy, or all of them as they are. */
export function filtered(readings: Readings, holds: (index: number) => boolean): Readings {
	const mask = new Uint8Array(readings.time.length);
	for (let index = 0; index < mask.length; index++) mask[index] = holds(index) ? 1 : 0;
	return masked(readings, mask);
}

/** The readings at whose index the mask has a 1; a copy, or all of them as they are. */
export function masked(readings: Readings, mask: Uint8Array): Readings {
	const { time, value } = readings;
	if (!mask.includes(0)) return readings;
	const times = new Float64Array(time.length);
	const values = new Float64Array(time.length);
	let count = 0;
	for (let index = 0; index < mask.length; index++) {
		if (mask[index] === 0) continue;
		times[count] = time[index]!;
		values[count++] = value[index]!;
	}
	return { time: times.subarray(0, count), value: values.subarray(0, count) };
}

/** The readings that are numbers. */
export const known = (readings: Readings): Readings =>
	filtered(readings, index => !Number.isNaN(readings.value[index]!));

/** New readings made of old ones, at the same times. */
export const mapped = ({ time, value }: Readings, make: (value: number, time: number) => number): Readings => ({
	time,
	value: value.map((one, index) => make(one, time[index]!)),
});
