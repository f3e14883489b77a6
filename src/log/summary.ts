/**
 * Many readings in bounded memory: all of them up to `most`, then every second, every fourth ... Evenly thinned, so that
 * medians and percentiles of a long run are those of its whole length, and the same log gives the same figures.
 */
export class Summary {
	private kept: number[] = [];
	private every = 1;
	private turn = 0;
	private readonly most: number;
	/** All that were taken. */
	count = 0;

	constructor(most = 8192) {
		this.most = most;
	}

	take(value: number): void {
		this.count++;
		if (++this.turn < this.every) return;
		this.turn = 0;
		this.kept.push(value);
		if (this.kept.length < this.most) return;
		this.kept = this.kept.filter((_, index) => index % 2 === 1);
		this.every *= 2;
	}

	get values(): readonly number[] {
		return this.kept;
	}
}
