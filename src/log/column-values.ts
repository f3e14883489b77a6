/** A value of a sorted list by its share: 0.5 is the median. NaN of an empty one. */
const shareOf = (sorted: ArrayLike<number>, share: number): number =>
	sorted.length === 0 ? Number.NaN : sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;

/** A column's values in the beginning of a log, as read, without what is no reading. */
export class ColumnValues {
	readonly all: Float64Array;
	readonly sorted: Float64Array;

	constructor(values: ArrayLike<number>) {
		this.all = new Float64Array(values);
		const found = new Float64Array(this.all.length);
		let count = 0;
		for (let index = 0; index < found.length; index++) {
			const value = this.all[index]!;
			if (!Number.isNaN(value)) found[count++] = value;
		}
		this.sorted = found.subarray(0, count).sort();
	}

	at(share: number): number {
		return shareOf(this.sorted, share);
	}

	get least(): number {
		return this.sorted[0] ?? Number.NaN;
	}

	get most(): number {
		return this.sorted.at(-1) ?? Number.NaN;
	}
}
