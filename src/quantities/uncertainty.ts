import { bind } from '../expressions/bind.ts';
import { slotNamed } from '../graph/graph.ts';
import type { State } from '../graph/solve.ts';
import { bandedNumber, spreadNumber, spreadPairs, spreadReadings, type Uncertain } from '../graph/uncertain.ts';
import type { Question } from '../sheet/question.ts';
import type { Answer } from '../sheet/sheet.ts';
import { AtDensity } from './answer-node.ts';
import type { AnyQuantity } from './quantity.ts';
import { spreadOf } from './spread.ts';

/** Every uncertain slot of a solved state: answers, usual values, and quantities with a band of their own. */
export function uncertainSlots(
	questions: readonly Question[],
	quantities: readonly AnyQuantity[],
	state: State,
	answers: (id: string) => Answer | undefined,
): Uncertain[] {
	return [
		...questions.flatMap(question => {
			const isGiven = state.given.has(slotNamed(state.graph, question.id));
			return uncertaintyOfAnswer(question, state, isGiven ? answers(question.id) : undefined) ?? [];
		}),
		...quantities.flatMap(quantity => uncertaintyOfQuantity(quantity, state) ?? []),
	];
}

/** How an answer strays, or the usual value in its place; null when it is exact. */
export function uncertaintyOfAnswer(question: Question, state: State, answer: Answer | undefined): Uncertain | null {
	const { graph, values, given } = state;
	const slot = slotNamed(graph, question.id);
	const value = values[slot];
	if (!isUncertain(state, slot)) return null;
	if (given.has(slot)) {
		const spread = spreadOf(question, answer!);
		if (spread.by === 0) return null;
		const read = given.get(slot)!.value;
		if (read instanceof AtDensity) {
			if (typeof value !== 'number' || typeof read.flow !== 'number') return null;
			// The spread is in the kind of flow that was answered; the density strays by itself.
			const share = spread.relative ? spread.by : spread.by / Math.abs(read.flow);
			return spreadNumber(slot, { by: share, relative: true }, value);
		}
		if (typeof value === 'number') return printed(question, answer!, value, spreadNumber(slot, spread, value));
		if (!Array.isArray(value)) return null;
		if (question.kind === 'per-cylinder') return spreadReadings(slot, spread, value.length);
		return question.kind === 'curve' || question.kind === 'loads' ? spreadPairs(slot, spread) : null;
	}
	const used = question.usual.find(
		({ when }) => when === undefined || bind(when, name => () => values[slotNamed(graph, name)])() === true,
	);
	return used && typeof value === 'number' ? spreadNumber(slot, used.spread, value) : null;
}

function uncertaintyOfQuantity(quantity: AnyQuantity, state: State): Uncertain | null {
	const slot = slotNamed(state.graph, quantity.id);
	const value = state.values[slot];
	if (!isUncertain(state, slot)) return null;
	// A loss or a count that is above 0 within its spread is never below 0: no formula would take it.
	if ('value' in quantity) {
		const least = quantity.value >= quantity.spread ? 0 : undefined;
		return spreadNumber(slot, { by: quantity.spread, relative: false }, quantity.value, least);
	}
	const band = 'band' in quantity ? quantity.band : undefined;
	return band && typeof value === 'number' ? bandedNumber(slot, band, value) : null;
}

const isUncertain = ({ values, replaced }: State, slot: number): boolean =>
	values[slot] !== undefined && values[slot] !== null && !replaced.has(slot);

/** Two figures from paperwork that are equal are one figure: they differ by nothing. */
const printed = (
	{ kind }: Question,
	{ known }: Answer,
	value: number,
	uncertain: Uncertain | null,
): Uncertain | null =>
	uncertain && known === 'paperwork' ? { ...uncertain, figure: `${kind} ${value.toPrecision(12)}` } : uncertain;
