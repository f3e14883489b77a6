import { expect, test } from 'vitest';
import { slotNamed } from '../../../src/graph/graph.ts';
import { solve } from '../../../src/graph/solve.ts';
import { quantities } from '../../../src/quantities/all.ts';
import { buildSheet, testModel } from '../../support/model.ts';
import { stateOf } from '../by-hand.ts';

/** Quantities of the model that break where what they read is as on a build, but for one input that is not known, or does not apply. */
function brokenWithout(build: 'boosted' | 'unboosted', instead: undefined | null): string[] {
	const { graph } = testModel();
	const own = new Set(quantities.map(({ id }) => id));
	const { values } = stateOf(buildSheet(build));
	return graph.nodes
		.filter(({ id }) => own.has(id))
		.flatMap(({ id, dependencies: inputs }) =>
			inputs.flatMap(input => {
				const replaced = new Map(inputs.map(name => [name, values[slotNamed(graph, name)]]));
				const { broken } = solve(graph, new Map(), replaced.set(input, instead), [id]);
				return [...broken].map(([slot, why]) => `${graph.nodes[slot]!.id} without ${input}: ${why}`);
			}),
		);
}

test.each(['boosted', 'unboosted'] as const)('an input that is not known breaks no quantity of the %s build', build => {
	expect(brokenWithout(build, undefined)).toEqual([]);
});

test.each(['boosted', 'unboosted'] as const)('nor does one that does not apply there: %s', build => {
	expect(brokenWithout(build, null)).toEqual([]);
});
