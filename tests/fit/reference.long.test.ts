import { expect, test } from 'vitest';
import { cholesky, dot, identity, solveWith } from '../../src/fit/matrix.ts';
import { curvatureOf, modeFrom, seenUnknowns } from '../../src/fit/mode.ts';
import { logLikelihood } from '../../src/fit/problem.ts';
import { seededRandom } from '../../src/fit/random.ts';
import { makeSampler } from '../../src/graph/sampling.ts';
import { seed } from '../counts.ts';
import { drawPosterior } from '../support/draw-posterior.ts';
import { drawnCar } from '../support/fitted-car.ts';
import { testModel } from '../support/model.ts';

const watched = [
	'injectors.boost_limit',
	'fuel.pump_boost_limit',
	'sensors.meter_boost_limit',
	'driveline.clutch_boost_limit',
	'engine.power',
] as const;
const [steps, dropped, kept] = [120_000, 20_000, 50] as const;

const moments = (values: readonly number[]) => {
	const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
	const square = values.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (values.length - 1);
	return { mean, deviation: Math.sqrt(square) };
};

/**
 * Another algorithm: random-walk Metropolis over all unknowns that anything seen moves with, one long chain, its steps of the
 * shape that the slopes at the mode give, 2.38 / root of the dimensions as wide (Roberts, Gelman & Gilks 1997). It shares no
 * line with ridge, weights or tempering.
 */
test.each([seed, seed + 1, seed + 2])(
	'a long random walk comes to the same limits, car %i',
	at => {
		const { problem, state, uncertain } = drawnCar(at, { points: 4 });
		const chance = seededRandom(at + 1);
		const unknowns = seenUnknowns(problem, new Float64Array(problem.dimensions));
		const mode = modeFrom(problem, unknowns, new Float64Array(problem.dimensions))!;
		const precision = curvatureOf(mode.slopes).map((row, index) => row.with(index, row[index]! + 1));
		const factor = cholesky(precision)!;
		const spread = cholesky(identity(unknowns.length).map(row => solveWith(factor, row)))!;
		const scale = 2.38 / Math.sqrt(unknowns.length);
		const heightOf = (point: Float64Array) => logLikelihood(problem, problem.at(point)) - dot(point, point) / 2;
		let here = mode.point.slice();
		let height = heightOf(here);
		const { graph } = testModel();
		const slots = watched.map(id => graph.slotOf.get(id)!);
		const sampler = makeSampler(state, uncertain, slots);
		const figuresOf = (point: Float64Array) => {
			const values = sampler.evaluate(
				point.map((value, index) => (unknowns.includes(index) ? value : chance.normal())),
			);
			return slots.map(slot => Number(values[slot]));
		};
		const walked: number[][] = [];
		let accepted = 0;
		for (let step = 0; step < steps; step++) {
			const normal = unknowns.map(() => chance.normal());
			const next = here.slice();
			for (const [row, unknown] of unknowns.entries()) {
				let move = 0;
				for (let column = 0; column <= row; column++) move += spread[row]![column]! * normal[column]!;
				next[unknown]! += scale * move;
			}
			const there = heightOf(next);
			if (Math.log(chance.uniform()) < there - height) {
				[here, height] = [next, there];
				accepted++;
			}
			if (step >= dropped && step % kept === 0) walked.push(figuresOf(here));
		}
		expect(accepted / steps).toBeGreaterThan(0.05);
		const drawn = drawPosterior(problem, at, 2000, 400)!.draws.map(figuresOf);
		for (const [column, id] of watched.entries()) {
			const long = moments(walked.map(row => row[column]!));
			const own = moments(drawn.map(row => row[column]!));
			// 400 draws' worth on one side, about as many on the other: a mean strays by 0.07 of a deviation, a deviation by 5 %.
			expect(Math.abs(own.mean - long.mean) / long.deviation, id).toBeLessThan(0.25);
			expect(Math.abs(own.deviation / long.deviation - 1), id).toBeLessThan(0.2);
		}
	},
	3_600_000,
);
