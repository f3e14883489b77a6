import { describe, expect, test } from 'vitest';
import type { Expression } from '../../src/expressions/tree.ts';
import { type State, solve } from '../../src/graph/solve.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import { Judge, type Verdict } from '../../src/rulebook/judge.ts';
import type { Rule } from '../../src/rulebook/rulebook.ts';
import { type Answer, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { buildSheet, testModel } from '../support/model.ts';

const { rulebook, graph } = testModel();
const boosted = buildSheet('boosted');

function stateOf(sheet: Sheet, replaced: Record<string, number | boolean> = {}): State {
	return solve(graph, givenAnswers(sheet, rulebook.questions), new Map(Object.entries(replaced)));
}

const without = (...ids: string[]) => ids.reduce((sheet, id) => withAnswer(sheet, id, undefined), boosted);
const given = (id: string, answer: Answer) => withAnswer(boosted, id, answer);

/** What rules of the given kind come to, on a sheet. */
function verdicts(own: Partial<Rule>, state: State): Verdict[] {
	const rule = { ...rulebook.rules[0]!, applies: null, each: null, thresholds: {}, ...own };
	return new Judge({ ...rulebook, rules: [rule] }, graph.slotOf).judge(state);
}
const verdict = (own: Partial<Rule>, state = stateOf(boosted)) => verdicts(own, state)[0]!;

const gap: Expression = ['name', 'ignition.gap'];
const wide: Expression = ['>', gap, ['value', 0.0005]];
const yes: Expression = ['value', true];
const no: Expression = ['value', false];
const isBoosted: Expression = ['!=', ['name', 'boost.kind'], ['value', 'none']];
const tooLarge: Expression = ['*', gap, ['*', ['value', 1e308], ['value', 1e308]]];

describe('the verdict follows from what applies and what holds', () => {
	const open = stateOf(without('ignition.gap'));
	test.each<[string, Expression | null, Expression, string, State?]>([
		['it holds', null, yes, 'holds'],
		['it fails', null, no, 'fails'],
		['it does not apply, whatever holds', no, no, 'does-not-apply'],
		['it does not apply, and what holds is not known', no, wide, 'does-not-apply', open],
		['what holds is not known', yes, wide, 'cannot-tell', open],
		['whether it applies is not known, though it holds', wide, yes, 'cannot-tell', open],
		['whether it applies is not known, though it fails', wide, no, 'cannot-tell', open],
		['a known part decides, that it fails', null, ['&&', wide, no], 'fails', open],
		['a known part decides, that it holds', null, ['||', wide, yes], 'holds', open],
	])('%s', (_, applies, holds, word, state) => {
		expect(verdict({ applies, holds }, state).verdict).toBe(word);
	});

	test('an answer that is not in effect makes it not apply', () => {
		const unboosted = stateOf(buildSheet('unboosted'));
		const target: Expression = ['>', ['name', 'boost.target'], ['value', 0]];
		expect(verdict({ holds: target }, unboosted).verdict).toBe('does-not-apply');
		expect(verdict({ applies: target, holds: yes }, unboosted).verdict).toBe('does-not-apply');
	});
});

describe('what is reported beside it', () => {
	test('missing: only what would decide, down to the answers', () => {
		const state = stateOf(without('ignition.gap', 'engine.bore', 'engine.displacement_stated'));
		const power: Expression = ['>', ['name', 'engine.power'], ['value', 0]];
		expect(verdict({ holds: ['&&', wide, power] }, state).missing).toEqual(
			[...new Set(['ignition.gap', ...state.missing[graph.slotOf.get('engine.power')!]!])].sort(),
		);
		expect(verdict({ holds: ['||', isBoosted, wide] }, state).missing).toEqual([]);
		expect(verdict({ applies: no, holds: wide }, state).missing).toEqual([]);
	});

	test('assumed: only usual values that went into it', () => {
		const margin: Expression = ['>', ['name', 'ignition.spark_margin'], ['value', 0]];
		const capacity = (own: Partial<Rule>) => verdict(own).assumed.includes('ignition.capacity');
		expect(capacity({ holds: margin })).toBe(true);
		expect(capacity({ holds: ['||', isBoosted, margin] })).toBe(false);
		expect(capacity({ applies: ['!', isBoosted], holds: margin })).toBe(false);
	});

	test('numbers: each name read and each threshold, now', () => {
		const { numbers } = verdict({
			thresholds: { least: { value: ['value', 0.0005], kind: 'length' } },
			holds: ['>', gap, ['name', 'least']],
		});
		expect(numbers).toEqual({ 'ignition.gap': 0.000762, least: 0.0005 });
	});

	test('distance: how far past the threshold, as a share of it, and only where it fails', () => {
		const past = (limit: number) => verdict({ holds: ['<=', gap, ['value', limit]] }).distance;
		expect(past(0.0005)).toBeCloseTo(0.524, 3);
		expect(past(0.001)).toBeNull();
		expect(verdict({ holds: no }).distance).toBeNull();
		expect(
			verdict({ holds: ['&&', ['==', ['name', 'boost.kind'], ['value', 'none']], ['<=', gap, ['value', 0.000381]]] })
				.distance,
		).toBeCloseTo(1, 12);
	});
});

describe('what broke is one line, the rest stands', () => {
	test('a rule that throws', () => {
		const broken: Expression = ['in', ['value', 'x'], ['value', 3]];
		const rules = [broken, yes].map(holds => ({
			...rulebook.rules[0]!,
			applies: null,
			each: null,
			thresholds: {},
			holds,
		}));
		const judge = new Judge({ ...rulebook, rules }, graph.slotOf);
		const state = stateOf(boosted);
		const [first, second] = judge.judge(state);
		expect(first).toMatchObject({ verdict: 'not-evaluated', missing: [], assumed: [] });
		expect(first!.broke).toBeTruthy();
		expect(second!.verdict).toBe('holds');
		expect(judge.wordsOf(0, state.values)).toEqual(['not-evaluated']);
	});

	test('a figure that is too large', () => {
		expect(verdict({ holds: ['>', tooLarge, ['value', 1]] })).toMatchObject({
			verdict: 'not-evaluated',
			broke: 'a figure in it is too large',
		});
		expect(verdict({ holds: ['||', ['>', tooLarge, ['value', 1]], yes] }).verdict).toBe('holds');
	});

	test('a quantity that broke, with its name', () => {
		const state = stateOf(given('engine.firing_order', { value: [1, 1, 1, 1, 1, 1, 1, 1] }));
		const pairs = verdict({ holds: ['==', ['size', ['name', 'ignition.companions']], ['value', 4]] }, state);
		expect(pairs.verdict).toBe('not-evaluated');
		expect(pairs.broke).toMatch(/^ignition\.companions: .*each cylinder once/);
	});
});

describe('a rule with each', () => {
	const leakdown = (value: unknown) => stateOf(given('engine.leakdown', { value, unit: '%' }));
	const tight: Partial<Rule> = {
		each: { answer: 'engine.leakdown', over: 'cylinders', subjects: null },
		holds: ['<=', ['name', 'value'], ['value', 0.15]],
	};

	test('makes a verdict a part, and a part without a reading cannot be decided', () => {
		const judged = verdicts(tight, leakdown([5, 15, 16, null, 5, 5, 5, 5])).map(({ subject, verdict: word }) => [
			subject,
			word,
		]);
		expect(judged.slice(0, 4)).toEqual([
			['1', 'holds'],
			['2', 'holds'],
			['3', 'fails'],
			['4', 'cannot-tell'],
		]);
		expect(judged.length).toBe(8);
	});

	test('names the whole answer as missing, for a part and for the list', () => {
		const part = verdicts(tight, leakdown([5, 5, 5, null, 5, 5, 5, 5]))[3]!;
		expect(part.missing).toEqual(['engine.leakdown']);
		const [whole, ...rest] = verdicts(tight, stateOf(without('engine.leakdown')));
		expect(whole).toMatchObject({ subject: null, verdict: 'cannot-tell', missing: ['engine.leakdown'] });
		expect(rest).toEqual([]);
	});

	test('gives the same words one by one as all at once', () => {
		const state = leakdown([5, 15, 16, null, 5, 5, 5, 5]);
		const judge = new Judge(
			{ ...rulebook, rules: [{ ...rulebook.rules[0]!, applies: null, thresholds: {}, ...tight } as Rule] },
			graph.slotOf,
		);
		expect(judge.wordsOf(0, state.values)).toEqual(judge.judge(state).map(({ verdict: word }) => word));
	});
});
