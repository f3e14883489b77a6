/** A number that a formula cannot take: which one, what came, what it takes. Thrown by every function of this room. */
export class OutOfRange extends Error {
	override readonly name = 'OutOfRange';
	readonly what: string;
	readonly found: number;
	readonly accepted: string;

	constructor(what: string, found: number, accepted: string) {
		// It says by itself what is wrong; to gather where it came from takes longer than the formula that it ends.
		const frames = Error.stackTraceLimit;
		Error.stackTraceLimit = 0;
		super(`${what} is ${found}; accepted: ${accepted}`);
		Error.stackTraceLimit = frames;
		this.what = what;
		this.found = found;
		this.accepted = accepted;
	}
}

/** Refuses a number that is not finite, or not above zero. */
export function positive(what: string, value: number): void {
	if (!(value > 0 && value < Number.POSITIVE_INFINITY)) throw new OutOfRange(what, value, 'above 0');
}

/** Refuses a number that is not finite, or lies outside `low` to `high` (both included). */
export function within(what: string, value: number, low: number, high: number): void {
	if (!(value >= low && value <= high)) throw new OutOfRange(what, value, `${low} to ${high}`);
}
