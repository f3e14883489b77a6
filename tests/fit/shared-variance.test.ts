import { expect, test } from 'vitest';
import { seededRandom } from '../../src/fit/random.ts';
import { sharedVariance } from '../../src/fit/shared-variance.ts';

/** Draws of five unknowns: 0 to 2 of the prior, 3 and 4 seen, which go together by 0.8. */
function drawsOf(seed: number, count: number): Float64Array[] {
	const chance = seededRandom(seed);
	return Array.from({ length: count }, () => {
		const [a, b, c, d, e] = Array.from({ length: 5 }, () => chance.normal()) as [
			number,
			number,
			number,
			number,
			number,
		];
		return Float64Array.of(a, b, c, d, 0.8 * d + 0.6 * e);
	});
}

const unknowns = [0, 1, 2, 3, 4];

// In closed form (normal unknowns, a line in them): the square of each correlation. Of 2 a + b + d the variance is 6.
test.each([1, 2, 3, 4, 5])('shares of a line in normal unknowns are those of the closed form, seed %i', seed => {
	const draws = drawsOf(seed, 2000);
	const values = Float64Array.from(draws.slice(0, 400), ([a, b, , d]) => 2 * a! + b! + d!);
	const shares = sharedVariance(values, draws, unknowns, new Set([3, 4]));
	// The figure's own variance of 400 draws strays by 7 %.
	for (const [at, share] of [4 / 6, 1 / 6, 0, 1 / 6, 0.64 / 6].entries())
		expect(Math.abs(shares[at]! - share), `${at}`).toBeLessThan(0.21 * share + 0.002);
});

test('what is no line is left over: a square moves nothing to either side', () => {
	const draws = drawsOf(6, 400);
	const values = Float64Array.from(draws, ([a, b]) => a! + b! ** 2);
	const [a, b] = sharedVariance(values, draws, unknowns, new Set([3, 4]));
	expect(a).toBeGreaterThan(0.2);
	expect(a).toBeLessThan(0.5);
	expect(b).toBeLessThan(0.05);
});

test('an unknown that does not move gives nothing', () => {
	const draws = drawsOf(7, 400).map(draw => draw.with(3, 0));
	const values = Float64Array.from(draws, ([a]) => a!);
	expect(sharedVariance(values, draws, [0, 3], new Set([3]))[1]).toBe(0);
});
