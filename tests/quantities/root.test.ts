import { expect, test } from 'vitest';
import { givenAnswers } from '../../src/quantities/given.ts';
import { solve } from '../../src/quantities/pass.ts';
import { evaluate } from '../../src/quantities/replace.ts';
import { drawnLimit, rootOf } from '../../src/quantities/root.ts';
import { run } from '../../src/quantities/run.ts';
import { makeSequence } from '../../src/quantities/sequence.ts';
import { seed } from '../counts.ts';
import { buildSheet, testModel } from '../support/model.ts';

const { graph, rulebook } = testModel();

test.each(['boosted', 'unboosted'] as const)(
	'every limit of the %s build is found from its nominal root where the full search finds it, on 20 draws of its answers',
	name => {
		const state = solve(graph, givenAnswers(buildSheet(name), rulebook.questions));
		const { values, given } = state;
		const moved = [...given].filter(([slot]) => typeof values[slot] === 'number' && graph.nodes[slot]!.question!.of[0]);
		const limits = graph.nodes.filter(node => node.limit && !node.heavy && typeof values[node.slot] === 'number');
		expect(limits.length).toBeGreaterThan(2);
		const deviate = makeSequence(seed, moved.length);
		for (let draw = 0; draw < 20; draw++) {
			const drawn = values.slice();
			for (const [index, [slot]] of moved.entries())
				drawn[slot] = (values[slot] as number) * (1 + 0.02 * deviate(draw, index));
			const order = graph.order.filter(slot => !given.has(slot) && !graph.nodes[slot]!.heavy);
			run(graph, drawn, given, order);
			for (const node of limits) {
				const { from, to } = node.limit!;
				const full = drawn[node.slot];
				const near = drawnLimit(state, drawn, node, rootOf(state, node));
				if (typeof full !== 'number') expect(near, node.id).toBe(full);
				else expect(Math.abs(near! - full), node.id).toBeLessThan(2e-4 * (to - from));
			}
		}
	},
);

test('finding a limit leaves every value as it was', () => {
	const state = solve(graph, givenAnswers(buildSheet('boosted'), rulebook.questions));
	const before = state.values.slice();
	for (const node of graph.nodes.filter(({ limit }) => limit)) rootOf(state, node);
	expect(state.values).toEqual(before);
	expect(evaluate(state, ['boost.lowest_limit'], {})).toEqual([before[graph.slotOf.get('boost.lowest_limit')!]]);
});
