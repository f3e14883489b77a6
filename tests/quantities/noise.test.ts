import { expect, test } from 'vitest';
import { givenAnswers } from '../../src/quantities/given.ts';
import { noiseOf } from '../../src/quantities/noise.ts';
import { solve } from '../../src/quantities/pass.ts';
import { buildSheet, testModel } from '../support/model.ts';

const { graph, rulebook } = testModel();
const state = solve(graph, givenAnswers(buildSheet('boosted'), rulebook.questions));

/** As far down as a draw goes. */
const farDown = () => -3;

test('a usual loss or count never strays below 0, where formulas refuse it, and strays freely above', () => {
	const strayed = graph.nodes.flatMap(node => {
		const { quantity } = node;
		if (!quantity || !('value' in quantity) || quantity.value < quantity.spread) return [];
		const noise = noiseOf(node, state, undefined);
		if (!noise) return [];
		const up = Number(noise.apply(quantity.value, () => 1)) - quantity.value;
		expect(up, node.id).toBeCloseTo(quantity.spread / 1.6449, 9);
		return [[node.id, Number(noise.apply(quantity.value, farDown))] as const];
	});
	for (const [id, value] of strayed) expect(value, id).toBeGreaterThanOrEqual(0);
	expect(Object.fromEntries(strayed)['fuel.usual_line_loss']).toBe(0);
	expect(strayed.some(([, value]) => value > 0)).toBe(true);
});
