import { expect, test } from 'vitest';
import { solve } from '../../src/graph/solve.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import { uncertainSlots } from '../../src/quantities/uncertainty.ts';
import type { Answer } from '../../src/sheet/sheet.ts';
import { buildSheet, testModel } from '../support/model.ts';

const { graph, rulebook, quantities } = testModel();
const state = solve(graph, givenAnswers(buildSheet('boosted'), rulebook.questions));

/** As far down as a draw goes. */
const farDown = [-3];

test('a usual loss or count never strays below 0, where formulas refuse it, and strays freely above', () => {
	const strayed = quantities.flatMap(quantity => {
		if (!('value' in quantity) || quantity.value < quantity.spread) return [];
		const [own] = uncertainSlots([], [quantity], state, () => undefined);
		if (!own) return [];
		const up = Number(own.apply(quantity.value, [1], 0)) - quantity.value;
		expect(up, quantity.id).toBeCloseTo(quantity.spread / 1.6449, 9);
		return [[quantity.id, Number(own.apply(quantity.value, farDown, 0))] as const];
	});
	for (const [id, value] of strayed) expect(value, id).toBeGreaterThanOrEqual(0);
	expect(Object.fromEntries(strayed)['fuel.usual_line_loss']).toBe(0);
	expect(strayed.some(([, value]) => value > 0)).toBe(true);
});

test('a target is exact where it was read off, as nothing is measured; guessed, or with a spread of its own, it strays', () => {
	const lambda = rulebook.questions.filter(({ id }) => id === 'boost.lambda');
	const strays = (answer: Answer) => uncertainSlots(lambda, [], state, () => answer).length > 0;
	expect(lambda.map(({ target }) => target)).toEqual([true]);
	expect(strays({ value: 0.8, known: 'measured' })).toBe(false);
	expect(strays({ value: 0.8, known: 'paperwork' })).toBe(false);
	expect(strays({ value: 0.8, known: 'estimate' })).toBe(true);
	expect(strays({ value: 0.8, known: 'paperwork', spread: 0.01 })).toBe(true);
});
