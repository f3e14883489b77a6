import { describe, expect, test } from 'vitest';
import { cholesky, solveWith } from '../../src/fit/matrix.ts';
import type { Problem } from '../../src/fit/problem.ts';
import { seededRandom } from '../../src/fit/random.ts';
import { drawPosterior } from '../support/draw-posterior.ts';

const [dimensions, readings] = [30, 40] as const;

/** Readings that are straight in the unknowns, in so many directions, with noise of 1. */
function straight(seed: number) {
	const { normal } = seededRandom(seed);
	const directions = Array.from({ length: 5 }, (_, at) =>
		Float64Array.from({ length: dimensions }, (_, place) => (place < 24 ? (normal() * (at + 0.3)) / 6 : 0)),
	);
	const rows = Array.from({ length: readings }, () => {
		const by = directions.map(() => normal());
		return Float64Array.from({ length: dimensions }, (_, place) =>
			directions.reduce((sum, direction, at) => sum + by[at]! * direction[place]!, 0),
		);
	});
	const truth = Float64Array.from({ length: dimensions }, normal);
	const read = rows.map(row => row.reduce((sum, one, at) => sum + one * truth[at]!, 0) + normal());
	const residuals = new Float64Array(readings);
	const problem: Problem = {
		dimensions,
		candidates: [...Array(dimensions).keys()],
		doubts: [],
		at(point) {
			for (const [at, row] of rows.entries()) {
				let sum = -read[at]!;
				for (let place = 0; place < dimensions; place++) sum += row[place]! * point[place]!;
				residuals[at] = -sum;
			}
			return { residuals, margins: new Float64Array(0) };
		},
	};
	return { problem, rows, read };
}

/** (I + At A)^-1 At y, and the roots of its diagonal: textbook linear regression with a Gaussian prior, Bishop 2006, 3.3. */
function closedForm({ rows, read }: ReturnType<typeof straight>) {
	const precision = Array.from({ length: dimensions }, (_, row) =>
		Float64Array.from({ length: dimensions }, (_, column) =>
			rows.reduce((sum, one) => sum + one[row]! * one[column]!, row === column ? 1 : 0),
		),
	);
	const lower = cholesky(precision)!;
	const right = Float64Array.from({ length: dimensions }, (_, at) =>
		rows.reduce((sum, one, reading) => sum + one[at]! * read[reading]!, 0),
	);
	const unit = (at: number) => Float64Array.from({ length: dimensions }, (_, place) => (place === at ? 1 : 0));
	return {
		mean: solveWith(lower, right),
		deviation: Float64Array.from({ length: dimensions }, (_, at) => Math.sqrt(solveWith(lower, unit(at))[at]!)),
	};
}

describe('where all is straight and Gaussian, the draws are those of the closed form', () => {
	test.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])('seed %i: means within 0.1 sd, sds within 7 %', seed => {
		const made = straight(seed);
		const { mean, deviation } = closedForm(made);
		const found = drawPosterior(made.problem, seed, 4000, 2500)!;
		for (let at = 0; at < dimensions; at++) {
			const values = found.draws.map(draw => draw[at]!);
			const middle = values.reduce((sum, one) => sum + one, 0) / values.length;
			const spread = Math.sqrt(values.reduce((sum, one) => sum + (one - middle) ** 2, 0) / (values.length - 1));
			expect(Math.abs(middle - mean[at]!) / deviation[at]!).toBeLessThan(0.1);
			expect(Math.abs(spread / deviation[at]! - 1)).toBeLessThan(0.07);
		}
	});
});
