import { expect, test } from 'vitest';
import { LimitNode } from '../../src/graph/limit.ts';
import { makeSampler } from '../../src/graph/sampling.ts';
import { measureSensitivities } from '../../src/graph/sensitivities.ts';
import { evaluate, solve } from '../../src/graph/solve.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import { uncertainSlots } from '../../src/quantities/uncertainty.ts';
import { answerTo } from '../../src/sheet/sheet.ts';
import { buildSheet, testModel } from '../support/model.ts';

const { graph, rulebook, quantities } = testModel();
const sheet = buildSheet('boosted');
const state = solve(graph, givenAnswers(sheet, rulebook.questions));
const expensive = graph.order.filter(slot => graph.nodes[slot]!.expensive && typeof state.values[slot] === 'number');
const uncertain = uncertainSlots(rulebook.questions, quantities, state, id => answerTo(sheet, id));
const sensitivities = measureSensitivities(state, expensive, uncertain);

test('with nothing moved every figure of the cylinder model is the nominal one', () => {
	for (const slot of expensive) {
		const node = graph.nodes[slot]!;
		const span = node instanceof LimitNode ? node.limit.to - node.limit.from : Math.abs(Number(state.values[slot]));
		expect(
			Math.abs(Number(sensitivities.follow(slot, state.values, () => 1)) - Number(state.values[slot])),
		).toBeLessThan(1e-6 * span);
	}
});

// A straight line over a small step: what is left is the curve of the model itself.
test.each(['engine.volumetric_efficiency', 'engine.compression_ratio', 'ignition.full_load_advance'])(
	'a small change of %s moves figures and limits as running the model again does, within a tenth of the move',
	id => {
		const slot = graph.slotOf.get(id)!;
		const strays = uncertain.find(other => other.slot === slot)!;
		const small = 0.2 * strays.difference;
		const drawn = state.values.slice();
		drawn[slot] = Number(state.values[slot]) + small;
		let moved = 0;
		for (const target of expensive) {
			const node = graph.nodes[target]!;
			if (state.bounds.has(target)) continue;
			const [again] = evaluate(state, [node.id], { [id]: drawn[slot] });
			const move = Number(again) - Number(state.values[target]);
			const followed = Number(sensitivities.follow(target, drawn, () => 1)) - Number(state.values[target]);
			expect(Math.abs(followed - move), node.id).toBeLessThanOrEqual(
				0.1 * Math.abs(move) + 1e-6 * Math.abs(Number(again)),
			);
			if (Math.abs(move) > 0) moved++;
		}
		expect(moved).toBeGreaterThan(2);
	},
);

/** By what a limit moves in a draw in which only one node with a band of its own strays, so many deviates. */
function drawnWith(own: string, deviate: number, id: string): number {
	const sampler = makeSampler(state, uncertain, [graph.slotOf.get(id)!]);
	const z = new Float64Array(sampler.dimensions);
	z[sampler.first.get(graph.slotOf.get(own)!)!] = deviate;
	return Number(sampler.evaluate(z)[graph.slotOf.get(id)!]);
}

test.each([
	[1.6449, 'engine.knock_boost_limit_low'],
	[-1.6449, 'engine.knock_boost_limit_high'],
] as const)(
	'at an end of the band of the knock integral the knock limit of a draw is the end that is worked out: %s',
	(deviate, end) => {
		const there = drawnWith('engine.knock_integral', deviate, 'engine.knock_boost_limit');
		expect(Math.abs(there - Number(state.values[graph.slotOf.get(end)!]))).toBeLessThan(200);
	},
);

test('half way along its band, the knock limit lies where the integral is so much higher, within a fifteenth of the move', () => {
	const factor = 1.6 ** 0.5;
	const there = drawnWith('engine.knock_integral', 1.6449 / 2, 'engine.knock_boost_limit');
	const [integral] = evaluate(state, ['engine.knock_integral'], { 'boost.target': there });
	expect(Math.abs(Math.log(Number(integral) * factor))).toBeLessThan(Math.log(factor) / 15);
});

// 16 % more pressure leaves the block the pressure that it stands over 1.16.
test.each([
	['engine.block_boost_limit', 'engine.peak_pressure', 'engine.block_pressure_most'],
	['engine.head_boost_limit', 'engine.head_clamp_ratio', null],
] as const)('a limit of cylinder pressure carries the band of the cylinder model: %s', (id, watched, most) => {
	const there = drawnWith('engine.peak_pressure', 1.6449, id);
	const [figure] = evaluate(state, [watched], { 'boost.target': there });
	const expected = most ? Number(state.values[graph.slotOf.get(most)!]) / 1.16 : 1.3 * 1.16;
	expect(Math.abs(Number(figure) / expected - 1)).toBeLessThan(0.002);
});

test('an end of a band does not stray with that band', () => {
	const id = 'engine.knock_boost_limit_low';
	expect(drawnWith('engine.knock_integral', 1.6449, id)).toBeCloseTo(Number(state.values[graph.slotOf.get(id)!]), 3);
});

test('what shows a band is a question', () => {
	const shown = quantities.flatMap(({ shownBy }) => shownBy ?? []);
	expect(shown).not.toEqual([]);
	for (const id of shown) expect(rulebook.questions.map(one => one.id)).toContain(id);
});
