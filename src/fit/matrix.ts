// Our own: these matrices are symmetric and small, and a library of matrices would be loaded by every audit.

/** A square matrix, row by row. */
export type Square = readonly Float64Array[];

/** 1 on the diagonal, 0 elsewhere. */
export const identity = (size: number): Float64Array[] =>
	Array.from({ length: size }, (_, row) => {
		const made = new Float64Array(size);
		made[row] = 1;
		return made;
	});

/** The scalar product, as long as the first. */
export function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
	let sum = 0;
	for (let at = 0; at < a.length; at++) sum += a[at]! * b[at]!;
	return sum;
}

/** Of a symmetric matrix above 0: L with L Lt = A; null where it is not above 0. Golub & Van Loan, 4.2. */
export function cholesky(a: Square): Float64Array[] | null {
	const lower = a.map(row => new Float64Array(row.length));
	for (let row = 0; row < a.length; row++) {
		for (let column = 0; column <= row; column++) {
			let rest = a[row]![column]!;
			for (let at = 0; at < column; at++) rest -= lower[row]![at]! * lower[column]![at]!;
			if (row !== column) lower[row]![column] = rest / lower[column]![column]!;
			else if (rest > 0) lower[row]![row] = Math.sqrt(rest);
			else return null;
		}
	}
	return lower;
}

/** Solves L Lt x = b; x may be given to be written to. */
export function solveWith(
	lower: Square,
	b: ArrayLike<number>,
	x: Float64Array = new Float64Array(lower.length),
): Float64Array {
	for (let row = 0; row < lower.length; row++) {
		const of = lower[row]!;
		let rest = b[row]!;
		for (let at = 0; at < row; at++) rest -= of[at]! * x[at]!;
		x[row] = rest / of[row]!;
	}
	for (let row = lower.length - 1; row >= 0; row--) {
		let rest = x[row]!;
		for (let at = row + 1; at < lower.length; at++) rest -= lower[at]![row]! * x[at]!;
		x[row] = rest / lower[row]![row]!;
	}
	return x;
}

/** Eigenvalues of a symmetric matrix, the greatest first, each with its vector of length 1. Jacobi's rotations, Golub & Van Loan, 8.5. */
export function eigen(symmetric: Square): { readonly value: number; readonly vector: Float64Array }[] {
	const size = symmetric.length;
	const a = symmetric.map(row => row.slice());
	const vectors = identity(size);
	for (let sweep = 0; sweep < 60; sweep++) {
		let off = 0;
		let whole = 0;
		for (let p = 0; p < size; p++)
			for (let q = 0; q < size; q++) {
				whole += a[p]![q]! ** 2;
				if (p !== q) off += a[p]![q]! ** 2;
			}
		if (off <= 1e-22 * whole) break;
		for (let p = 0; p < size; p++) for (let q = p + 1; q < size; q++) rotate(a, vectors, p, q);
	}
	return vectors.map((vector, at) => ({ value: a[at]![at]!, vector })).sort((one, other) => other.value - one.value);
}

/** Turns so that a[p][q] becomes 0; the rows of `vectors` turn with it. */
function rotate(a: Float64Array[], vectors: Float64Array[], p: number, q: number): void {
	const [ap, aq] = [a[p]!, a[q]!];
	if (ap[q] === 0) return;
	const theta = (aq[q]! - ap[p]!) / (2 * ap[q]!);
	const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
	const c = 1 / Math.sqrt(t * t + 1);
	const s = t * c;
	for (const row of a) {
		const [x, y] = [row[p]!, row[q]!];
		row[p] = c * x - s * y;
		row[q] = s * x + c * y;
	}
	for (const [one, other] of [
		[ap, aq],
		[vectors[p]!, vectors[q]!],
	] as const)
		for (let at = 0; at < one.length; at++) {
			const [x, y] = [one[at]!, other[at]!];
			one[at] = c * x - s * y;
			other[at] = s * x + c * y;
		}
}
