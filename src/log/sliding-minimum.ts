/** The least of the readings of the last `window` s, at a constant cost a reading. */
export class SlidingMinimum {
	/** Only readings that are still the least of all from them on: times and values both rise. */
	private times: number[] = [];
	private values: number[] = [];
	private first = 0;
	private readonly window: number;

	constructor(window: number) {
		this.window = window;
	}

	/** Takes a reading, no older than the one before it; gives the least of those in the window, itself included. */
	take(time: number, value: number): number {
		while (this.values.length > this.first && this.values.at(-1)! >= value) {
			this.values.pop();
			this.times.pop();
		}
		this.times.push(time);
		this.values.push(value);
		while (time - this.times[this.first]! > this.window) this.first++;
		if (this.first > 1000) {
			this.times = this.times.slice(this.first);
			this.values = this.values.slice(this.first);
			this.first = 0;
		}
		return this.values[this.first]!;
	}
}
