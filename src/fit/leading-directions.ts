import { dot } from './matrix.ts';

/**
 * Orthonormal directions in which vectors lie but for `left` of their length at most: the longest first, what lies along it taken
 * off all others (Gram and Schmidt's method with pivots; Golub & Van Loan, 5.2).
 */
export function leadingDirections(vectors: readonly Float64Array[], left: number): Float64Array[] {
	const rest = vectors.map(vector => vector.slice());
	const found: Float64Array[] = [];
	for (;;) {
		let [longest, most] = [rest[0]!, 0];
		for (const one of rest) {
			const square = dot(one, one);
			if (square > most) [longest, most] = [one, square];
		}
		if (!(most > left * left)) return found;
		const direction = longest.map(value => value / Math.sqrt(most));
		found.push(direction);
		for (const one of rest) {
			const along = dot(one, direction);
			for (let at = 0; at < one.length; at++) one[at]! -= along * direction[at]!;
		}
	}
}
