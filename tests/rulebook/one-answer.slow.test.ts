import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reach } from '../../src/graph/paths.ts';
import { solve } from '../../src/graph/solve.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import type { Verdict } from '../../src/rulebook/judge.ts';
import { namesRead } from '../../src/rulebook/reads.ts';
import { answerTo, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { counts, seed } from '../counts.ts';
import { chance } from '../support/chance.ts';
import { buildSheet, testModel } from '../support/model.ts';
import { randomSheet } from '../support/random-sheet.ts';

const { rulebook, graph, judge } = testModel();
const ids = rulebook.questions.map(({ id }) => id);
const answered = (sheet: Sheet) => ids.filter(id => answerTo(sheet, id) !== undefined);

type Verdicts = ReadonlyMap<string, Verdict>;

function verdictsOn(sheet: Sheet): Verdicts {
	const state = solve(graph, givenAnswers(sheet, rulebook.questions));
	return new Map(judge.judge(state).map(verdict => [`${verdict.rule.id} ${verdict.subject ?? ''}`, verdict]));
}

/**
 * Whether two answers say opposite things: it ran clean at a higher voltage than the one at which it broke up. A line of its
 * own says so, and the lower one counts; without it the other does.
 */
const contradicts = (sheet: Sheet): boolean =>
	solve(graph, givenAnswers(sheet, rulebook.questions)).values[graph.slotOf.get('ignition.points_disagree')!] === true;

const decided = ({ verdict }: Verdict) => verdict === 'holds' || verdict === 'fails';

/** Verdicts that are turned round from one sheet to another. */
function turned(before: Verdicts, after: Verdicts): [string, Verdict, Verdict][] {
	return [...before].flatMap(([key, was]): [string, Verdict, Verdict][] => {
		const is = after.get(key);
		return is && decided(was) && decided(is) && was.verdict !== is.verdict ? [[key, was, is]] : [];
	});
}

/** What the engine showed goes before the sum, and lines say so; without it the sum speaks, to the worse alone. */
const sumSpeaks = (id: string, was: Verdict, is: Verdict): boolean =>
	id === 'ignition.knock_seen' &&
	namesRead(was.rule).has('ignition.shown_clean') &&
	was.numbers['ignition.shown_clean'] === true &&
	was.verdict === 'holds' &&
	is.verdict === 'fails' &&
	(is.numbers['engine.knock_integral_low'] as number) > 1;

/** Verdicts that an answer taken away turns round though no usual value in its place says so. */
function turnedSilently(id: string, before: Verdicts, after: Verdicts): string[] {
	const reached = reach([graph.slotOf.get(id)!], slot => graph.readers[slot]!);
	const inItsPlace = (usual: string) => reached.has(graph.slotOf.get(usual) ?? -1);
	return turned(before, after)
		.filter(([, was, is]) => !sumSpeaks(id, was, is))
		.filter(([, was, is]) => !is.assumed.some(usual => inItsPlace(usual) || !was.assumed.includes(usual)))
		.map(([key, was, is]) => `without ${id}, ${key}: ${was.verdict} becomes ${is.verdict}`);
}

describe('one answer taken away never turns a verdict round, but for a usual value that says so', () => {
	test.each(['boosted', 'unboosted'] as const)('from the %s build', name => {
		const sheet = buildSheet(name);
		const full = verdictsOn(sheet);
		const wrong = answered(sheet).flatMap(id => turnedSilently(id, full, verdictsOn(withAnswer(sheet, id, undefined))));
		expect(wrong).toEqual([]);
	});

	test('from builds with many faults', () => {
		let turnedByUsual = 0;
		fc.assert(
			fc.property(fc.integer(), fc.nat(), (start, place) => {
				const sheet = randomSheet(rulebook, graph, chance(start));
				fc.pre(!contradicts(sheet));
				const there = answered(sheet);
				const id = there[place % there.length]!;
				const [full, less] = [verdictsOn(sheet), verdictsOn(withAnswer(sheet, id, undefined))];
				turnedByUsual += turned(full, less).length;
				expect(turnedSilently(id, full, less)).toEqual([]);
			}),
			{ seed, numRuns: counts.edits },
		);
		console.info(`${counts.edits} answers taken away; ${turnedByUsual} verdicts turned by a usual value that said so`);
	});
});

test('one answer more never changes a verdict that was reported without a usual value', () => {
	let named = 0;
	fc.assert(
		fc.property(fc.integer(), fc.nat(), fc.double({ min: 0, max: 0.8, noNaN: true }), (start, place, share) => {
			const random = chance(start);
			const whole = randomSheet(rulebook, graph, random);
			fc.pre(!contradicts(whole));
			const there = answered(whole);
			const added = there[place % there.length]!;
			const lost = there.filter(id => id === added || random() < share);
			const before = lost.reduce((sheet, id) => withAnswer(sheet, id, undefined), whole);
			const [less, more] = [verdictsOn(before), verdictsOn(withAnswer(before, added, answerTo(whole, added)))];
			for (const [key, was] of less) {
				if (!decided(was) || was.assumed.length > 0) continue;
				named++;
				expect(more.get(key)?.verdict, `${key} with ${added}`).toBe(was.verdict);
			}
		}),
		{ seed, numRuns: counts.edits },
	);
	console.info(`${counts.edits} answers added; ${named} verdicts known before and after`);
});
