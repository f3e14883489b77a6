import { expect, test } from 'vitest';
import { givenAnswers } from '../../src/quantities/given.ts';
import { noiseOf } from '../../src/quantities/noise.ts';
import { solve } from '../../src/quantities/pass.ts';
import { evaluate } from '../../src/quantities/replace.ts';
import { measureSlopes } from '../../src/quantities/slopes.ts';
import { answerTo } from '../../src/sheet/sheet.ts';
import { buildSheet, testModel } from '../support/model.ts';

const { graph, rulebook } = testModel();
const sheet = buildSheet('boosted');
const state = solve(graph, givenAnswers(sheet, rulebook.questions));
const heavy = graph.order.filter(slot => graph.nodes[slot]!.heavy && typeof state.values[slot] === 'number');
const noises = graph.nodes.flatMap(
	node => noiseOf(node, state, node.question ? answerTo(sheet, node.id) : undefined) ?? [],
);
const slopes = measureSlopes(state, heavy, noises);

test('with nothing moved every figure of the cylinder model is the nominal one', () => {
	for (const slot of heavy) {
		const { limit } = graph.nodes[slot]!;
		const span = limit ? limit.to - limit.from : Math.abs(Number(state.values[slot]));
		expect(Math.abs(Number(slopes.follow(slot, state.values)) - Number(state.values[slot]))).toBeLessThan(1e-6 * span);
	}
});

// A straight line over a small step: what is left is the curve of the model itself.
test.each(['engine.volumetric_efficiency', 'engine.compression_ratio', 'ignition.full_load_advance', 'boost.target'])(
	'a small change of %s moves figures and limits as running the model again does, within a tenth of the move',
	id => {
		const slot = graph.slotOf.get(id)!;
		const noise = noises.find(other => other.slot === slot)!;
		const small = 0.2 * noise.difference;
		const drawn = state.values.slice();
		drawn[slot] = Number(state.values[slot]) + small;
		let moved = 0;
		for (const target of heavy) {
			const node = graph.nodes[target]!;
			if (state.bounds.has(target)) continue;
			const [again] = evaluate(state, [node.id], { [id]: drawn[slot] });
			const move = Number(again) - Number(state.values[target]);
			const followed = Number(slopes.follow(target, drawn)) - Number(state.values[target]);
			expect(Math.abs(followed - move), node.id).toBeLessThanOrEqual(
				0.1 * Math.abs(move) + 1e-6 * Math.abs(Number(again)),
			);
			if (Math.abs(move) > 0) moved++;
		}
		expect(moved).toBeGreaterThan(2);
	},
);
