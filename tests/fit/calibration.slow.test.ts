import { beforeAll, describe, expect, test } from 'vitest';
import { agreement } from '../../src/fit/agreement.ts';
import { logLikelihood } from '../../src/fit/problem.ts';
import { makeSampler } from '../../src/graph/sampling.ts';
import { counts, seed } from '../counts.ts';
import { drawPosterior } from '../support/draw-posterior.ts';
import { drawnCar } from '../support/fitted-car.ts';
import { testModel } from '../support/model.ts';

/** What the truth is looked for in: limits, power, and how likely the log is. */
const watched = [
	'injectors.boost_limit',
	'fuel.pump_boost_limit',
	'sensors.meter_boost_limit',
	'driveline.clutch_boost_limit',
	'ignition.boost_limit',
	'engine.power',
] as const;
const likelihood = 'the likelihood';
const [draws, bins] = [99, 20] as const;

/** By quantity: of each car the rank of the truth among the draws. */
const ranks = new Map<string, number[]>();
const refused: number[] = [];

beforeAll(() => {
	const { graph } = testModel();
	const slots = watched.map(id => graph.slotOf.get(id)!);
	for (let car = 0; car < counts.fits; car++) {
		const { problem, state, uncertain, truth } = drawnCar(seed + car, { points: counts.fits < 100 ? 3 : 6 });
		const found = drawPosterior(problem, seed + car, draws, 200);
		// Chains that do not agree: the program goes without a fit, as it does where a log fits no car.
		if (!found) {
			refused.push(0);
			continue;
		}
		const sampler = makeSampler(state, uncertain, slots);
		const figures = (point: Float64Array) => {
			const values = sampler.evaluate(point);
			return new Map<string, number>([
				...watched.map((id, at): [string, number] => [id, Number(values[slots[at]!])]),
				[likelihood, logLikelihood(problem, problem.at(point))],
			]);
		};
		const real = figures(truth);
		const all = found.draws.map(figures);
		for (const [id, value] of real) {
			const below = all.filter(draw => draw.get(id)! < value).length;
			ranks.set(id, [...(ranks.get(id) ?? []), below]);
		}
		refused.push(
			agreement(
				problem,
				found.seen,
				found.mode,
				problem.compared.map(({ channel }) => channel),
			),
		);
	}
}, 7_200_000);

/**
 * Talts et al. 2018: where inputs and sensor errors are drawn from the prior and the log is made from them, the truth has any
 * rank among the draws with the same chance. Two-sided chi-squared, Wilson and Hilferty.
 */
describe(`${counts.fits} cars drawn from what their sheets say`, () => {
	test.each([...watched, likelihood])('the truth has any rank alike: %s', id => {
		const seen = new Array<number>(bins).fill(0);
		for (const rank of ranks.get(id)!) seen[Math.floor((rank * bins) / (draws + 1))]!++;
		const meant = ranks.get(id)!.length / bins;
		const square = seen.reduce((sum, count) => sum + (count - meant) ** 2 / meant, 0);
		const spread = 2 / (9 * (bins - 1));
		const deviate = (Math.cbrt(square / (bins - 1)) - (1 - spread)) / Math.sqrt(spread);
		// p over 0.01 divided by the seven quantities: 3.0 deviates.
		expect(deviate, seen.join(' ')).toBeLessThan(3);
	});

	// 85 to 95 % of 400; of few cars as much wider as chance makes it.
	test.each(watched.filter(id => id.endsWith('limit')))('nine of ten bands hold the truth: %s', id => {
		const held = ranks.get(id)!.filter(rank => rank >= 5 && rank <= 94).length / ranks.get(id)!.length;
		const chance = 3 * Math.sqrt((0.9 * 0.1) / counts.fits);
		expect(held).toBeGreaterThan(0.9 - Math.max(0.05, chance));
		expect(held).toBeLessThan(0.9 + Math.max(0.05, chance));
	});

	test('a right log is refused in at most 2 of 100', () => {
		const share = refused.filter(p => p < 0.01).length / counts.fits;
		// Of few cars as many more as chance makes of 2 in 100.
		const chance = counts.fits < 200 ? 3 * Math.sqrt((0.02 * 0.98) / counts.fits) : 0;
		expect(share).toBeLessThanOrEqual(0.02 + chance);
	});
});
