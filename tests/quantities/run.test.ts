import fc from 'fast-check';
import { expect, test } from 'vitest';
import { givenAnswers } from '../../src/quantities/given.ts';
import { solve } from '../../src/quantities/pass.ts';
import { run } from '../../src/quantities/run.ts';
import { counts, seed } from '../counts.ts';
import { testModel } from '../support/model.ts';
import { anySheet } from './any-sheet.ts';

const { graph, rulebook } = testModel();
const light = graph.order.filter(slot => !graph.nodes[slot]!.heavy);

test('values alone say what the full pass says: the same number, not known, or does not apply here', () => {
	fc.assert(
		fc.property(anySheet(rulebook.questions, 'plausible', 0.5), sheet => {
			const { values, given } = solve(graph, givenAnswers(sheet, rulebook.questions));
			const again = values.slice();
			run(graph, again, given, light);
			for (const slot of light) {
				const { id, limit, quantity } = graph.nodes[slot]!;
				const [before, after] = [values[slot], again[slot]];
				// What is made ready for others is a new one each time; a limit is found to a share of where it is looked for.
				if (quantity?.kind === 'hidden' && before) expect(typeof after, id).toBe(typeof before);
				else if (!limit) expect(after, id).toEqual(before);
				else if (typeof before === 'number') expect(Math.abs(Number(after) - before), id).toBeLessThan(1e-8 * limit.to);
			}
		}),
		{ numRuns: counts.sheets, seed },
	);
});
