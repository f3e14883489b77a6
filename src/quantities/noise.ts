import { bind } from '../expressions/bind.ts';
import type { Outcome } from '../expressions/tree.ts';
import type { Question } from '../sheet/question.ts';
import type { Answer } from '../sheet/sheet.ts';
import { AtDensity } from './answers.ts';
import type { Node } from './graph.ts';
import type { State } from './pass.ts';
import { differenceOf, type Spread, spreadOf } from './spread.ts';

/** Nine cases of ten lie within this many sigma either way. */
export const nineOfTen = 1.6449;

/** How one slot strays: its value for the deviates it is given, one a dimension. */
export interface Noise {
	readonly slot: number;
	readonly dimensions: number;
	/** The spread about the nominal value, as a difference; for slopes. */
	readonly difference: number;
	apply(value: Outcome, deviate: (dimension: number) => number): Outcome;
}

/** The noise of a node, or null when it is exact: of an answer, of a usual value, of a quantity's own band. */
export function noiseOf(node: Node, state: State, answer: Answer | undefined): Noise | null {
	const value = state.values[node.slot];
	if (value === undefined || value === null || state.replaced.has(node.slot)) return null;
	if (node.question) return answerNoise(node, node.question, state, answer);
	const { quantity, slot } = node;
	// A loss or a count that is above 0 within its spread is never below 0: no formula would take it.
	if (quantity && 'value' in quantity)
		return byDifference(slot, quantity.spread, quantity.value >= quantity.spread ? 0 : Number.NEGATIVE_INFINITY);
	const band = quantity && 'band' in quantity ? quantity.band : undefined;
	return band && typeof value === 'number' ? byBand(slot, band, value) : null;
}

function answerNoise({ slot }: Node, question: Question, state: State, answer: Answer | undefined): Noise | null {
	const value = state.values[slot];
	if (state.given.has(slot)) {
		const spread = spreadOf(question, answer!);
		if (spread.by === 0 || state.given.get(slot)!.value instanceof AtDensity)
			return typeof value === 'number' && spread.by > 0 ? byShare(slot, spread, value) : null;
		if (typeof value === 'number')
			return spread.relative ? byShare(slot, spread, value) : byDifference(slot, spread.by);
		return Array.isArray(value) ? listNoise(slot, question, spread, value) : null;
	}
	const used = question.usual.find(
		({ when }) =>
			when === undefined || bind(when, name => () => state.values[state.graph.slotOf.get(name)!])() === true,
	);
	if (!used || typeof value !== 'number' || used.spread.by === 0) return null;
	return used.spread.relative ? byShare(slot, used.spread, value) : byDifference(slot, used.spread.by);
}

function byDifference(slot: number, difference: number, least = Number.NEGATIVE_INFINITY): Noise | null {
	if (difference === 0) return null;
	const sigma = difference / nineOfTen;
	return {
		slot,
		dimensions: 1,
		difference,
		apply: (value, deviate) => Math.max(least, (value as number) + sigma * deviate(0)),
	};
}

function byShare(slot: number, spread: Spread, value: number): Noise {
	const sigma = spread.by / nineOfTen;
	return {
		slot,
		dimensions: 1,
		difference: differenceOf(spread, value),
		apply: (now, deviate) => (now as number) * (1 + sigma * deviate(0)),
	};
}

/** A band is lopsided: its ends are the twentieth and the last twentieth of the cases. */
function byBand(slot: number, [low, high]: readonly [number, number], value: number): Noise {
	const [down, up] = [Math.log(low) / nineOfTen, Math.log(high) / nineOfTen];
	return {
		slot,
		dimensions: 1,
		difference: (value * (high - low)) / 2,
		apply(now, deviate) {
			const z = deviate(0);
			return (now as number) * Math.exp(z < 0 ? -z * down : z * up);
		},
	};
}

/** Readings stray one by one; a curve's flows and a list of loads stray together, as one scale. */
function listNoise(slot: number, question: Question, spread: Spread, list: readonly unknown[]): Noise | null {
	const sigma = spread.by / nineOfTen;
	const stray = (value: number, z: number) => (spread.relative ? value * (1 + sigma * z) : value + sigma * z);
	if (question.kind === 'per-cylinder') {
		return {
			slot,
			dimensions: list.length,
			difference: 0,
			apply: (now, deviate) =>
				(now as (number | null)[]).map((reading, index) => (reading === null ? null : stray(reading, deviate(index)))),
		};
	}
	if (question.kind !== 'curve' && question.kind !== 'loads') return null;
	return {
		slot,
		dimensions: 1,
		difference: 0,
		apply(now, deviate) {
			const z = deviate(0);
			return (now as (readonly [unknown, number])[]).map(point => [point[0], stray(point[1], z)]);
		},
	};
}
