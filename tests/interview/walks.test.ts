import { expect, test, vi } from 'vitest';
import { open } from '../../src/interview/queue.ts';
import { halfTyped, leave, resume, start } from '../../src/interview/session.ts';
import { cylindersOf, type Pass, questionAt, type State } from '../../src/interview/state.ts';
import { step } from '../../src/interview/step.ts';
import { checkSheet } from '../../src/sheet/check.ts';
import { checkAnswer, type Found } from '../../src/sheet/check-answer.ts';
import { answerTo, emptySheet, type Sheet } from '../../src/sheet/sheet.ts';
import { counts, seed } from '../counts.ts';
import { chance } from '../support/chance.ts';
import { buildSheet, testModel } from '../support/model.ts';
import { randomEvent } from './walker.ts';

const model = testModel();
const { questions } = model.rulebook;
const steps = 200;
/** Long walks take as long as they take. */
vi.setConfig({ testTimeout: 1_200_000 });

/** Walks by chance; `each` looks at every state and at the one before it. */
function walks(count: number, from: number, each: (state: State, before: State, at: number) => void): void {
	for (let walk = 0; walk < count; walk++) {
		const random = chance(seed + from + walk);
		const sheet: Sheet = walk % 3 === 0 ? buildSheet(walk % 2 ? 'boosted' : 'unboosted') : emptySheet('mule');
		const pass: Pass = walk % 4 === 1 ? 'full' : 'quick';
		let state = start(model, sheet, pass);
		for (let at = 0; at < steps; at++) {
			const before = state;
			const event = randomEvent(before, random);
			state = step(before, event);
			try {
				each(state, before, at);
			} catch (error) {
				throw new Error(`walk ${walk}, step ${at}, ${JSON.stringify(event)} at ${before.at}`, { cause: error });
			}
		}
	}
}

/** The answer that was given fits its question; now and then, and after another number of cylinders, the whole sheet is checked. */
function fits({ sheet }: State, before: State, at: number): void {
	const cylinders = cylindersOf(sheet);
	if (at % 50 === 0 || cylinders !== cylindersOf(before.sheet)) checkSheet(sheet, questions);
	const question = questionAt(before)!;
	const answer = answerTo(sheet, question.id);
	const found: Found = { problems: [], warnings: [] };
	if (answer) checkAnswer(question, answer, cylinders, found);
	if (found.problems.length > 0) throw new Error(JSON.stringify(found.problems));
}

test('whatever is done, there is a way on and a way out, and the sheet can be read again', () => {
	walks(counts.walks, 0, (state, before, at) => {
		// A question in sight is one of the rulebook's; where none is in sight nothing is open, or the person asked for that.
		if (state.at !== null && !questionAt(state)) throw new Error(`${state.at} is no question`);
		if (state.sheet !== before.sheet) fits(state, before, at);
		else if (state.relevance !== before.relevance) throw new Error('what is in effect moved without an answer');
		if (state.at !== null && at % 20 === 0) {
			const on = step(state, { do: 'later' });
			if (on.at === state.at) throw new Error('putting it off does not lead on');
			if (on.at === null && !state.fromReview && !state.recheck && open(on).length > 0)
				throw new Error('questions were left out');
			if (step(state, { do: 'review' }).at !== null) throw new Error('no way out to the review');
		}
	});
});

test('"not known" to everything comes to an end, from anywhere', () => {
	walks(Math.ceil(counts.walks / 50), 10_000, (state, _, at) => {
		if (at !== steps - 1) return;
		let now: State = { ...state, fromReview: false, recheck: null };
		for (let left = questions.length + 1; now.at !== null; left--) {
			if (left === 0) throw new Error('it never ends');
			now = step(now, { do: 'not-known' });
		}
		if (state.at !== null) expect(open(now).map(({ id }) => id)).toEqual([]);
	});
});

test('left and come back to is the same as never left', () => {
	walks(Math.ceil(counts.walks / 10), 20_000, (state, _, at) => {
		if (at % 10 > 0) return;
		const saved = JSON.parse(JSON.stringify(leave(state, 'half a li')));
		const again = resume(model, checkSheet(saved, questions).sheet, state.pass, state.section);
		if (state.at === null) {
			expect(again.state.at).toBe(open(state)[0]?.id ?? null);
		} else {
			expect([again.state.at, again.text]).toEqual([state.at, halfTyped(state, 'half a li')]);
			expect(again.state.recheck).toEqual(state.recheck);
		}
		const { draft: _draft, ...sheet } = JSON.parse(JSON.stringify(state.sheet));
		expect(again.state.sheet).toEqual(sheet);
		expect([...again.state.later]).toEqual([...state.later]);
		if (state.at !== null) {
			const [one, other] = [state, again.state].map(now => step({ ...now, fromReview: false }, { do: 'not-known' }));
			expect(other!.sheet).toEqual(JSON.parse(JSON.stringify(one!.sheet)));
			expect(other!.at).toBe(one!.at);
		}
	});
});
