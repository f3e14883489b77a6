import { describe, expect, test } from 'vitest';
import { isSecondRound, personSeconds } from '../../src/interview/person-time.ts';
import { aboutWords, roundLeft } from '../../src/interview/queue.ts';
import { start } from '../../src/interview/session.ts';
import { questionAt, type State } from '../../src/interview/state.ts';
import { step } from '../../src/interview/step.ts';
import { accesses } from '../../src/sheet/access.ts';
import type { Question } from '../../src/sheet/question.ts';
import { type Answer, answerTo, emptySheet, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { counts, seed } from '../counts.ts';
import { chance } from '../support/chance.ts';
import { buildSheet, testModel } from '../support/model.ts';

const begin = () => start(testModel(), emptySheet('mule'), 'quick');

/** The questions of a quick pass, in order, answered by `answer`. */
function pass(answer: (question: Question) => Answer): Question[] {
	const asked: Question[] = [];
	let state: State = begin();
	for (let question = questionAt(state); question; question = questionAt(state)) {
		asked.push(question);
		const given = answer(question);
		state = step(state, given.value === undefined ? { do: 'not-known' } : { do: 'set', answer: given });
	}
	return asked;
}
const minutes = (questions: readonly Question[]) =>
	questions.reduce((sum, question) => sum + personSeconds(question, 'us', 8), 0) / 60;
const firstMinutes = (answer: (question: Question) => Answer) =>
	minutes(pass(answer).filter(question => !isSecondRound(question)));
const asBuilt = (sheet: Sheet) => pass(({ id }) => answerTo(sheet, id) ?? { known: 'not-known' });
const years = (sheet: Sheet, other: boolean) =>
	withAnswer(sheet, 'harness.year', other ? { value: 1995 } : answerTo(sheet, 'engine.year'));

describe('a quick pass by the time of a person: 200 words a minute, 4 s a key choice, 10 s a paper, 30 s a look, 120 s a meter', () => {
	test.each([
		['unboosted', false],
		['unboosted', true],
		['boosted', false],
		['boosted', true],
	] as const)('%s, two years: %s: the first round takes 20 minutes at most, help not read', (name, other) => {
		const asked = asBuilt(years(buildSheet(name), other));
		const first = asked.filter(question => !isSecondRound(question));
		console.info(
			`${name}, ${other ? 'two years' : 'one year'}: first round ${first.length} questions, ${minutes(first).toFixed(1)} min; second ${asked.length - first.length}, ${(minutes(asked.filter(isSecondRound)) / 60).toFixed(1)} h`,
		);
		expect(minutes(first)).toBeLessThanOrEqual(20);
		if (name === 'boosted') expect(asked.length).toBeGreaterThanOrEqual(60);
	});

	test('the first round comes first, the second goes by place', () => {
		const asked = asBuilt(years(buildSheet('boosted'), true));
		const begins = asked.findIndex(isSecondRound);
		expect(begins).toBeGreaterThan(20);
		expect(asked.slice(begins).every(isSecondRound)).toBe(true);
		const places = asked.slice(begins).map(({ access }) => accesses.indexOf(access));
		expect(places).toEqual([...places].sort((a, b) => a - b));
	});

	/** Two years that differ, pressure for an air meter, plugs that differ; of the rest nothing is known, so that nothing falls away. */
	test('no first round is longer than the one in which every branch is open', () => {
		const open: Readonly<Record<string, string>> = {
			'boost.kind': 'turbocharger',
			'sensors.meter_kind': 'none-speed-density',
		};
		const longest = firstMinutes(({ id }) => (open[id] === undefined ? { known: 'not-known' } : { value: open[id] }));
		console.info(`a first round with every branch open: ${longest.toFixed(1)} min`);
		expect(longest).toBeLessThanOrEqual(20);
		for (let walk = 0; walk < counts.passes; walk++) {
			const random = chance(seed + walk);
			const byChance = firstMinutes(({ kind, choices }) => {
				const ids = Object.keys(choices);
				return kind === 'choice' ? { value: ids[Math.floor(random() * ids.length)]! } : { known: 'not-known' };
			});
			expect(byChance).toBeLessThanOrEqual(longest);
		}
	});
});

test('it is reported before it starts, as it goes, and where the second round begins', () => {
	let state = begin();
	expect(state.said?.text).toMatch(/^A first round .*: about \d+ minutes at most\. Then one with the gauge in hand\.$/);
	let before = roundLeft(state)!;
	for (let notice = ''; !notice.includes('The first round is done.'); notice = state.said?.text ?? '') {
		state = step(state, { do: 'not-known' });
		const left = roundLeft(state)!;
		if (!left.second) expect(left.count).toBeLessThan(before.count + 12);
		before = left;
	}
	expect(isSecondRound(questionAt(state)!)).toBe(true);
	expect(roundLeft(state)!.second).toBe(true);
	expect(aboutWords(61)).toBe('about 2 minutes');
	expect(aboutWords(61, true)).toBe('2 min');
	expect(aboutWords(3 * 3600)).toBe('about 3 hours');
	expect(roundLeft(start(testModel(), emptySheet('mule'), 'full'))).toBeNull();
});
