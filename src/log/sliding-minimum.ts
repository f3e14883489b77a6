/** The least of the readings of the last `window` s, at a constant cost a reading. */
export class SlidingMinimum {
	/** Only readings that are still the least of all from them on, from `first` to `end`: times and values both rise. */
	private times = new Float64Array(1024);
	private values = new Float64Array(1024);
	private first = 0;
	private end = 0;
	private readonly window: number;

	constructor(window: number) {
		this.window = window;
	}

	/** Takes a reading, no older than the one before it; gives the least of those in the window, itself included. */
	take(time: number, value: number): number {
		while (this.end > this.first && this.values[this.end - 1]! >= value) this.end--;
		if (this.end === this.times.length) this.makeRoom();
		this.times[this.end] = time;
		this.values[this.end++] = value;
		while (time - this.times[this.first]! > this.window) this.first++;
		return this.values[this.first]!;
	}

	/** Moves what is left to the front; where that is most of it, into twice the room. */
	private makeRoom(): void {
		const { times, values, first, end } = this;
		if (end - first > times.length / 2) {
			this.times = new Float64Array(2 * times.length);
			this.values = new Float64Array(2 * times.length);
		}
		this.times.set(times.subarray(first, end));
		this.values.set(values.subarray(first, end));
		this.end = end - first;
		this.first = 0;
	}
}
