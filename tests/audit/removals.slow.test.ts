import fc from 'fast-check';
import { expect, test } from 'vitest';
import { answerTo } from '../../src/sheet/sheet.ts';
import { counts, seed } from '../counts.ts';
import { chance } from '../support/chance.ts';
import { demoSheets } from '../support/demo.ts';
import { testModel } from '../support/model.ts';
import { randomSheet } from '../support/random-sheet.ts';
import { openedBy, otherAnswers } from '../support/removals.ts';
import { finished } from './finished.ts';

const model = testModel();
const { questions } = model.rulebook;

/** A twelfth of the questions; at length all. */
const tried = questions.filter((_, index) => counts.everyAnswer || index % 12 === 0);

test.each([...finished, ...demoSheets()])('no answer taken away opens a gate: %s', (_, sheet) => {
	expect(tried.flatMap(otherAnswers).length).toBeGreaterThan(60);
	expect(tried.flatMap(question => openedBy(sheet, question, otherAnswers(question), model))).toEqual([]);
});

test('nor does one taken away from a random build', () => {
	fc.assert(
		fc.property(fc.integer(), fc.nat(), (start, place) => {
			const sheet = randomSheet(model.rulebook, model.graph, chance(start));
			const there = questions.filter(({ id }) => answerTo(sheet, id) !== undefined);
			const question = there[place % there.length]!;
			expect(openedBy(sheet, question, [answerTo(sheet, question.id)!], model)).toEqual([]);
		}),
		{ seed, numRuns: counts.removals },
	);
});
