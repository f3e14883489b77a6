import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Question } from '../../src/sheet/question.ts';
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

/** On one of the cars every choice is tried; elsewhere a twelfth, at length all. */
const whole: readonly string[] = ['boosted, never boosted yet'];

const isChoice = ({ kind }: Question) => kind === 'choice' || kind === 'several';
const triedOn = (name: string) =>
	questions.filter(
		(question, index) => counts.everyAnswer || index % 12 === 0 || (isChoice(question) && whole.includes(name)),
	);

test.each([...finished, ...demoSheets()])('no answer taken away opens a gate: %s', (name, sheet) => {
	const tried = triedOn(name);
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
