import { drawFrom, type Posterior, startOf } from '../../src/fit/posterior.ts';
import type { Problem } from '../../src/fit/problem.ts';
import { finish } from '../../src/fit/steps.ts';

/** Draws of a problem from its start to their end. Null: no mode, or the chains do not agree. */
export function drawPosterior(problem: Problem, seed: number, count: number, enough: number): Posterior | null {
	const start = startOf(problem, seed);
	return start && finish(drawFrom(problem, start, count, enough));
}
