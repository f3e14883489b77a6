import { beforeAll, describe, expect, test } from 'vitest';
import { latinHypercube } from '../../src/graph/latin-hypercube.ts';
import { makeSampler } from '../../src/graph/sampling.ts';
import type { Sheet } from '../../src/sheet/sheet.ts';
import { counts, seed } from '../counts.ts';
import { drawPosterior } from '../support/draw-posterior.ts';
import { drawnCar } from '../support/fitted-car.ts';
import { buildSheet, testModel } from '../support/model.ts';

/** Limits that a reading of a pull says something of. */
const watched = [
	'injectors.boost_limit',
	'sensors.meter_boost_limit',
	'ignition.boost_limit',
	'driveline.clutch_boost_limit',
] as const;
const [draws, near] = [400, 4 * 6894.757] as const;

/** Every number estimated; injectors, meter's input and clutch so small that their limits lie near the boost of the pulls. */
function estimated(): Sheet {
	const { answers, ...sheet } = buildSheet('boosted');
	const scaled: Readonly<Record<string, number>> = { 'injectors.rated_flow': 0.7, 'driveline.clutch_rating': 0.8 };
	const guessed = Object.entries(answers).map(([section, inside]) => [
		section,
		Object.fromEntries(
			Object.entries(inside).map(([name, answer]) => [
				name,
				typeof answer.value === 'number' && answer.unit
					? { ...answer, value: answer.value * (scaled[`${section}.${name}`] ?? 1), known: 'estimate' }
					: answer,
			]),
		),
	]);
	return { ...sheet, answers: Object.fromEntries(guessed) } as Sheet;
}

const held: boolean[] = [];
/** Cars whose chains do not agree: the program goes without a fit there. */
let undrawn = 0;
const widths: { readonly id: string; readonly ratio: number }[] = [];

beforeAll(() => {
	const { graph } = testModel();
	const slots = watched.map(id => graph.slotOf.get(id)!);
	for (let car = 0; car < counts.knownCars; car++) {
		const { problem, state, uncertain, truth, log } = drawnCar(seed + 7000 + car, { sheet: estimated() });
		const found = drawPosterior(problem, seed + car, draws, 400);
		if (!found) {
			undrawn++;
			continue;
		}
		const sampler = makeSampler(state, uncertain, slots);
		const figures = (point: ArrayLike<number>) => {
			const values = sampler.evaluate(point);
			return slots.map(slot => Number(values[slot]));
		};
		const band = (rows: readonly number[][], column: number) => {
			const sorted = rows.map(row => row[column]!).sort((a, b) => a - b);
			return [sorted[Math.floor(0.05 * (draws - 1))]!, sorted[Math.ceil(0.95 * (draws - 1))]!] as const;
		};
		const real = figures(truth);
		const points = latinHypercube(sampler.names, draws, seed + car);
		const z = new Float64Array(sampler.dimensions);
		const before = Array.from({ length: draws }, (_, index) => {
			points.point(index, z);
			return figures(z);
		});
		const after = found.draws.map(figures);
		const peak = Math.max(...log.points.map(({ read }) => read.manifold_pressure!.value)) - log.ambient;
		for (const [column, id] of watched.entries()) {
			const [low, high] = band(after, column);
			held.push(real[column]! >= low && real[column]! <= high);
			const [least, most] = band(before, column);
			const nominal = Number(state.values[slots[column]!]);
			if (Math.abs(nominal - peak) <= near) widths.push({ id, ratio: (high - low) / (most - least) });
		}
	}
}, 14_400_000);

describe(`${counts.knownCars} simulated cars of which the truth is known`, () => {
	test('at most 2 of 100 cannot be drawn', () => {
		console.info(`${undrawn} of ${counts.knownCars} cars could not be drawn`);
		expect(undrawn).toBeLessThanOrEqual(counts.knownCars / 50);
	});

	test('the bands hold the truth in 85 to 95 %', () => {
		const share = held.filter(Boolean).length / held.length;
		console.info(`bands hold the truth: ${(100 * share).toFixed(1)} % of ${held.length}`);
		expect(share).toBeGreaterThanOrEqual(0.85);
		expect(share).toBeLessThanOrEqual(0.95);
	});

	test('limits within 4 psi of the peak are at most 0.85 as wide as before, in the mean of each', () => {
		for (const id of watched) {
			const own = widths.filter(one => one.id === id).map(({ ratio }) => ratio);
			if (own.length === 0) continue;
			const mean = own.reduce((sum, one) => sum + one, 0) / own.length;
			console.info(
				`${id}: ${own.length} near the peak, ${mean.toFixed(2)} as wide as before, the widest ${Math.max(...own).toFixed(2)}`,
			);
			expect(mean, id).toBeLessThanOrEqual(0.85);
		}
		expect(widths.length).toBeGreaterThan(0);
	});
});
