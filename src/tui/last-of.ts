/**
 * A pure function that keeps its last outcome, for what a key seldom changes: at the next key it is called with the very same
 * values.
 */
export function lastOf<Arguments extends readonly unknown[], Outcome>(
	make: (...values: Arguments) => Outcome,
): (...values: Arguments) => Outcome {
	let last: { readonly values: Arguments; readonly outcome: Outcome } | null = null;
	return (...values) => {
		if (!last?.values.every((value, at) => Object.is(value, values[at]))) last = { values, outcome: make(...values) };
		return last.outcome;
	};
}
