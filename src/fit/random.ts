import { uniform } from '../graph/latin-hypercube.ts';

/** A source of random numbers, the same for one seed. */
export interface RandomSource {
	/** From 0 up to 1. */
	uniform(): number;
	/** Standard normal. */
	normal(): number;
}

/** Normal deviates by the polar method of Marsaglia. */
export function seededRandom(seed: number): RandomSource {
	const next = uniform(seed);
	let kept: number | null = null;
	return {
		uniform: next,
		normal() {
			if (kept !== null) {
				const value = kept;
				kept = null;
				return value;
			}
			for (;;) {
				const [x, y] = [2 * next() - 1, 2 * next() - 1];
				const square = x * x + y * y;
				if (square >= 1 || square === 0) continue;
				const factor = Math.sqrt((-2 * Math.log(square)) / square);
				kept = y * factor;
				return x * factor;
			}
		},
	};
}
