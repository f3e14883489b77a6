import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Outcome } from '../../src/expressions/tree.ts';
import type { AnyQuantity } from '../../src/quantities/quantity.ts';
import { unitsOfAnswer } from '../../src/sheet/canonical.ts';
import type { Question } from '../../src/sheet/question.ts';
import { type Answer, answerTo, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { unitsOf } from '../../src/units/table.ts';
import { fromCanonical, toCanonical, type Unit } from '../../src/units/unit.ts';
import { counts, seed } from '../counts.ts';
import { testModel } from '../support/model.ts';
import { anySheet } from './any-sheet.ts';
import { stateOf } from './by-hand.ts';

const { questions } = testModel().rulebook;

/** Another unit of the kind, if there is one in which any number can be said: not a wire gauge, not a dash size. */
function otherThan(unit: Unit, lot: number): Unit {
	const any = ({ refuses, assumes, curve }: Unit) => !refuses && !assumes && !curve;
	const others = unitsOf(unit.kind).filter(other => any(other) && other !== unit);
	return others.length === 0 ? unit : others[lot % others.length]!;
}

/** The same answer, each number in another unit. */
function inOthers(question: Question, answer: Answer, lot: number): Answer {
	const from = unitsOfAnswer(question, answer);
	if (answer.value === undefined || from.some(unit => unit === undefined) || from.length === 0) return answer;
	const to = from.map(unit => otherThan(unit!, lot));
	const turn = (value: unknown, column: number) => {
		const [was, is] = [from[column]!, to[column]!];
		return typeof value === 'number' && is !== was ? fromCanonical(toCanonical(value, was), is) : value;
	};
	const last = from.length - 1;
	const turned = (value: unknown): unknown =>
		Array.isArray(value)
			? value.map(item => (Array.isArray(item) ? [turn(item[0], 0), turn(item[1], last)] : turn(item, 0)))
			: turn(value, 0);
	const names = to.map(({ symbol }) => symbol);
	return { ...answer, value: turned(answer.value), unit: names.length === 1 ? names[0]! : names };
}

const inOtherUnits = (sheet: Sheet, lot: number): Sheet =>
	questions.reduce((now, question, index) => {
		const answer = answerTo(sheet, question.id);
		return answer ? withAnswer(now, question.id, inOthers(question, answer, lot + index)) : now;
	}, sheet);

/** To 1e-9; a limit to twice what it is looked for to. */
function same(a: Outcome, b: Outcome, quantity: AnyQuantity): boolean {
	if (Array.isArray(a) && Array.isArray(b))
		return a.length === b.length && a.every((item, index) => same(item as Outcome, b[index] as Outcome, quantity));
	if (typeof a !== 'number' || typeof b !== 'number') return a === b;
	const step = quantity.kind === 'pressure' ? 275790 : 0;
	const found = 'limit' in quantity ? quantity.limit.to - quantity.limit.from : step;
	return Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b)) + 2e-9 * found;
}

test('the same sheet with every number in another unit gives the same quantities', () => {
	let compared = 0;
	const shown = testModel().quantities.filter(({ kind }) => kind !== 'hidden');
	fc.assert(
		fc.property(anySheet(questions, 'plausible', 0.9), fc.nat(11), (sheet, lot) => {
			const [one, two] = [stateOf(sheet), stateOf(inOtherUnits(sheet, lot))];
			for (const quantity of shown) {
				const slot = one.graph.slotOf.get(quantity.id)!;
				const [a, b] = [one.values[slot], two.values[slot]];
				expect(same(a, b, quantity), `${quantity.id}: ${a} and ${b}`).toBe(true);
				expect(two.bounds.get(slot), quantity.id).toBe(one.bounds.get(slot));
				if (typeof a === 'number') compared++;
			}
		}),
		{ seed, numRuns: counts.sheets, endOnFailure: true },
	);
	expect(compared).toBeGreaterThan(60 * counts.sheets);
});
