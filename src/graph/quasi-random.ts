/** Points in standard normal coordinates: a sequence of its own, or draws from what is known of the inputs by then. */
export interface Points {
	/** Writes the coordinates of one point. */
	point(index: number, into: Float64Array): void;
}

/**
 * A low-discrepancy sequence, turned into standard normal deviates: dimension j of point n is the fraction of
 * shift_j + n sqrt(prime_j) (Kronecker's sequence). The shifts come from the seed, so that the same sheet is drawn alike
 * on every machine. Cut at 3 sigma.
 */
export function quasiRandom(seed: number, dimensions: number): Points {
	const random = uniform(seed);
	const steps = primes(dimensions).map(prime => Math.sqrt(prime) % 1);
	const shifts = steps.map(() => random());
	return {
		point(index, into) {
			for (let dimension = 0; dimension < dimensions; dimension++) {
				const at = (shifts[dimension]! + (index + 1) * steps[dimension]!) % 1;
				into[dimension] = Math.max(-3, Math.min(3, inverseNormal(Math.min(1 - 1e-9, Math.max(1e-9, at)))));
			}
		},
	};
}

/** A number from a text, for a seed (FNV-1a). */
export function seedFrom(text: string): number {
	let hash = 0x811c9dc5;
	for (let index = 0; index < text.length; index++) hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193);
	return hash >>> 0;
}

/** Numbers from 0 up to 1, always the same for one seed: a 32-bit counter, mixed by multiplication. */
export function uniform(seed: number): () => number {
	let state = seed >>> 0;
	return () => {
		state = (state + 0x6d2b79f5) | 0;
		let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
		mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
		return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
	};
}

function primes(count: number): number[] {
	const found: number[] = [];
	for (let number = 2; found.length < count; number++) {
		if (found.every(prime => number % prime !== 0)) found.push(number);
	}
	return found;
}

/** The deviate with this share of a standard normal below it; within 4.5e-4. Abramowitz & Stegun 26.2.23. */
function inverseNormal(share: number): number {
	const tail = Math.min(share, 1 - share);
	const t = Math.sqrt(-2 * Math.log(tail));
	const z =
		t - (2.515517 + 0.802853 * t + 0.010328 * t * t) / (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t * t * t);
	return share < 0.5 ? -z : z;
}
