import { describe, expect, test } from 'vitest';
import { makeVerdictSensitivity } from '../../src/audit/verdict-sensitivity.ts';
import type { Outcome } from '../../src/expressions/tree.ts';
import { evaluationOn, run } from '../../src/graph/evaluation.ts';
import { LimitNode } from '../../src/graph/limit.ts';
import { type State, solve } from '../../src/graph/solve.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import { canonicalUnits } from '../../src/units/kinds.ts';
import { counts } from '../counts.ts';
import { brokenBuild, thirdOf } from '../support/audited.ts';
import { buildSheet, testModel } from '../support/model.ts';

const model = testModel();
const { graph, rulebook, judge } = model;

/** The same by working out the whole graph and every rule for each candidate. */
function flippedAtLength(state: State, slot: number, candidates: readonly Outcome[]): string[] {
	const isFixed = (other: number) => {
		const node = graph.nodes[other]!;
		return other === slot || (node.expensive && node instanceof LimitNode);
	};
	const order = graph.order.filter(other => !isFixed(other));
	const words = candidates.map(candidate => {
		const values = state.values.slice();
		values[slot] = candidate;
		const given = new Map(state.given).set(slot, { value: candidate, assumed: [] });
		run(evaluationOn({ graph, values, given }), order);
		return rulebook.rules.map((_, place) => judge.wordsOf(place, values).join());
	});
	return rulebook.rules.filter((_, place) => new Set(words.map(all => all[place])).size > 1).map(({ id }) => id);
}

/** Two or more values for a question: its choices, or the ends of what is plausible. */
const candidatesOf = ({ kind, choices, plausible }: (typeof rulebook.questions)[number]): readonly Outcome[] =>
	kind === 'choice' ? Object.keys(choices) : kind === 'whole' || kind in canonicalUnits ? [...(plausible ?? [])] : [];

describe('which rules an answer decides', () => {
	// Each answer on two of the four sheets; at length on all.
	test.each([
		['boosted', 0, buildSheet('boosted')],
		['unboosted', 1, buildSheet('unboosted')],
		['broken', 1, brokenBuild()],
		['a third of it', 0, thirdOf(brokenBuild())],
	])('%s: is found as if everything were worked out for each of its values', (_, from, sheet) => {
		const state = solve(graph, givenAnswers(sheet, rulebook.questions));
		const differing = makeVerdictSensitivity(model, state);
		let found = 0;
		// Backwards: an answer that another one brings into effect has been tried before it.
		for (const [at, question] of rulebook.questions.toReversed().entries()) {
			if (!counts.everyAnswer && at % 2 !== from) continue;
			const candidates = candidatesOf(question);
			const slot = graph.slotOf.get(question.id)!;
			if (candidates.length < 2 || state.values[slot] === null) continue;
			const ids = differing(slot, candidates).map(({ id }) => id);
			found += ids.length;
			expect(ids.toSorted(), question.id).toEqual(flippedAtLength(state, slot, candidates).sort());
		}
		console.info(`${found} verdicts turn`);
		expect(found).toBeGreaterThan(100);
	});
});
