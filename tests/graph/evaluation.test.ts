import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluationOn, run } from '../../src/graph/evaluation.ts';
import { LimitNode } from '../../src/graph/limit.ts';
import { solve } from '../../src/graph/solve.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import { counts, seed } from '../counts.ts';
import { anySheet } from '../quantities/any-sheet.ts';
import { testModel } from '../support/model.ts';

const { graph, rulebook, quantities } = testModel();
const hidden = new Set(quantities.filter(({ kind }) => kind === 'hidden').map(({ id }) => id));
/** The lowest of the limits is found as closely as these are. */
const lowest = graph.slotOf.get('boost.lowest_limit')!;
const farthest = Math.max(
	...graph.feeds[lowest]!.map(slot => graph.nodes[slot]!).map(node => (node instanceof LimitNode ? node.limit.to : 0)),
);
const light = graph.order.filter(slot => !graph.nodes[slot]!.expensive);

test('an evaluation without a trace comes to what one with a trace does: the same number, not known, or does not apply here', () => {
	fc.assert(
		fc.property(anySheet(rulebook.questions, 'plausible', 0.5), sheet => {
			const { values, given } = solve(graph, givenAnswers(sheet, rulebook.questions));
			const again = values.slice();
			run(evaluationOn({ graph, values: again, given }), light);
			for (const slot of light) {
				const node = graph.nodes[slot]!;
				const { id } = node;
				const [before, after] = [values[slot], again[slot]];
				// What is made ready for others is a new one each time; a limit is found to a share of where it is looked for.
				if (hidden.has(id) && before) expect(typeof after, id).toBe(typeof before);
				else if (node instanceof LimitNode && typeof before === 'number')
					expect(Math.abs(Number(after) - before), id).toBeLessThan(1e-8 * node.limit.to);
				else if (slot === lowest && typeof before === 'number')
					expect(Math.abs(Number(after) - before), id).toBeLessThan(1e-8 * farthest);
				else if (!(node instanceof LimitNode)) expect(after, id).toEqual(before);
			}
		}),
		{ numRuns: counts.sheets, seed },
	);
});
