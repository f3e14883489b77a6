import { expect } from 'vitest';
import { unitOf } from '../../src/audit/quantity-values.ts';
import type { Outcome } from '../../src/expressions/tree.ts';
import { slotNamed } from '../../src/graph/graph.ts';
import { type State, solve } from '../../src/graph/solve.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import { checkSheet } from '../../src/sheet/check.ts';
import { type Answer, emptySheet, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { testModel } from '../support/model.ts';

// For sheets written by hand whose figures are worked out again by plain arithmetic: the conversions are written out here,
// and nothing of the units or the physics room is used.

export const inch = 0.0254;
export const foot = 0.3048;
export const psi = 4.4482216152605 / inch ** 2;
export const poundHour = 0.45359237 / 3600;
export const poundFoot = 4.4482216152605 * foot;
export const horsepower = 550 * poundFoot;
export const gallonHour = (231 * inch ** 3) / 3600;
export const fahrenheit = (degrees: number) => ((degrees - 32) * 5) / 9 + 273.15;

/** A measured number; `unit` as a hand would write it. */
export const num = (value: unknown, unit?: string | readonly string[]): Answer => ({
	value,
	...(unit ? { unit } : {}),
	known: 'measured',
});

/** A choice, a count or a list. */
export const is = (value: unknown): Answer => ({ value });

export const notKnown: Answer = { known: 'not-known' };

/** Answers by id, undefined for one that is not there, on top of a sheet. */
export const sheetOf = (
	answers: Readonly<Record<string, Answer | undefined>>,
	on: Sheet = emptySheet('by hand'),
): Sheet => Object.entries(answers).reduce((sheet, [id, answer]) => withAnswer(sheet, id, answer), on);

/** One quantity of a solved sheet. */
export interface SolvedQuantity {
	readonly value: Outcome;
	readonly unit: string | null;
	readonly bound: 'above' | 'below' | undefined;
	readonly missing: readonly string[];
	readonly assumed: readonly string[];
	readonly broken: string | undefined;
}

/** Checks a sheet as a file is checked, and solves it. */
export function stateOf(sheet: Sheet): State {
	const { graph, rulebook } = testModel();
	const checked = checkSheet(JSON.parse(JSON.stringify(sheet)), rulebook.questions).sheet;
	return solve(graph, givenAnswers(checked, rulebook.questions));
}

/** What the model says of a sheet's quantities, each by its id. */
export function solved(sheet: Sheet): (id: string) => SolvedQuantity {
	const state = stateOf(sheet);
	const { quantities } = testModel();
	return id => {
		const slot = slotNamed(state.graph, id);
		const quantity = quantities.find(other => other.id === id);
		return {
			value: state.values[slot],
			unit: quantity ? unitOf(quantity) : null,
			bound: state.bounds.get(slot),
			missing: state.missing[slot]!,
			assumed: state.assumed[slot]!,
			broken: state.broken.get(slot),
		};
	};
}

/** Within 0.1 %, as the contract asks of figures worked out independently. */
export function close(found: Outcome, wanted: number, what: string, within = 1e-3): void {
	expect(typeof found, `${what} is known`).toBe('number');
	expect(Math.abs(Number(found) / wanted - 1), `${what}: ${found} for ${wanted}`).toBeLessThan(within);
}

/** Where a rising function passes 0, by halving: for limits, which the model finds another way. */
export function halving(rising: (x: number) => number, low: number, high: number): number {
	let [below, above] = [low, high];
	for (let step = 0; step < 60; step++) {
		const middle = (below + above) / 2;
		if (rising(middle) < 0) below = middle;
		else above = middle;
	}
	return (below + above) / 2;
}

/** One quantity from figures for what it reads, in SI, as a formula of a book would be used. */
export function figure(id: string, given: Readonly<Record<string, Outcome>>): Outcome {
	const { graph } = testModel();
	return solve(graph, new Map(), new Map(Object.entries(given)), [id]).values[slotNamed(graph, id)];
}
