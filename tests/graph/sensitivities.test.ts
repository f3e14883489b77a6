import { expect, test } from 'vitest';
import { LimitNode } from '../../src/graph/limit.ts';
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
		expect(Math.abs(Number(sensitivities.follow(slot, state.values)) - Number(state.values[slot]))).toBeLessThan(
			1e-6 * span,
		);
	}
});

// A straight line over a small step: what is left is the curve of the model itself.
test.each(['engine.volumetric_efficiency', 'engine.compression_ratio', 'ignition.full_load_advance', 'boost.target'])(
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
			const followed = Number(sensitivities.follow(target, drawn)) - Number(state.values[target]);
			expect(Math.abs(followed - move), node.id).toBeLessThanOrEqual(
				0.1 * Math.abs(move) + 1e-6 * Math.abs(Number(again)),
			);
			if (Math.abs(move) > 0) moved++;
		}
		expect(moved).toBeGreaterThan(2);
	},
);
