import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { State } from '../../src/graph/solve.ts';
import { rangeOf } from '../../src/quantities/range.ts';
import { type Answer, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { counts, seed } from '../counts.ts';
import { testModel } from '../support/model.ts';
import { anySheet } from './any-sheet.ts';
import { stateOf } from './by-hand.ts';

const { quantities, rulebook } = testModel();
const { questions } = rulebook;

/** Looks at every quantity of many sheets. */
function eachQuantity(sheets: fc.Arbitrary<Sheet>, look: (state: State, slot: number, id: string) => void): void {
	fc.assert(
		fc.property(sheets, sheet => {
			const state = stateOf(sheet);
			for (const { id } of quantities) look(state, state.graph.slotOf.get(id)!, id);
		}),
		{ seed, numRuns: counts.sheets, endOnFailure: true },
	);
}

describe.each([
	['plausible', 0.95],
	['plausible', 0.4],
	['hard', 0.95],
] as const)('whatever the answers, inside their %s ranges, %d of them given', (range, share) => {
	test('every number is finite, and one that the quantity can come to', () => {
		const ranges = new Map(quantities.map(quantity => [quantity.id, rangeOf(quantity)]));
		eachQuantity(anySheet(questions, range, share), ({ values }, slot, id) => {
			const [value, range] = [values[slot], ranges.get(id)];
			if (typeof value !== 'number' || !range) return;
			expect(value, id).toSatisfy(Number.isFinite);
			expect(value, id).toBeGreaterThanOrEqual(range[0] ?? -Infinity);
			expect(value, id).toBeLessThanOrEqual(range[1] ?? Infinity);
		});
	});

	test('what is not known says which answers are missing, by the names of questions, or what it could not take', () => {
		const asked = new Set(questions.map(({ id }) => id));
		eachQuantity(anySheet(questions, range, share), ({ values, missing, broken }, slot, id) => {
			if (values[slot] !== undefined) return;
			if (broken.has(slot)) expect(broken.get(slot), id).not.toBe('');
			else expect(missing[slot], id).not.toEqual([]);
			for (const answer of missing[slot]!) expect(asked, `${id} lacks ${answer}`).toContain(answer);
		});
	});
});

test('inside the plausible ranges no formula refuses what it is given, but parts that do not fit together', () => {
	// Chamber, dome, gasket and deck, each plausible alone, can together leave next to no room.
	const ofVolumes = ['engine.clearance_volume', 'engine.ratio_from_volumes'];
	const fitting: readonly (readonly [string, Answer])[] = [
		['engine.compression_ratio', { value: 9.5, unit: ':1' }],
		['driveline.clutch_outer_radius', { value: 5.5, unit: 'in' }],
		['driveline.clutch_inner_radius', { value: 3.5, unit: 'in' }],
	];
	const answered = anySheet(questions, 'plausible', 0.95).map(sheet =>
		fitting.reduce((now, [id, answer]) => withAnswer(now, id, answer), sheet),
	);
	eachQuantity(answered, ({ broken }, slot, id) => {
		if (!ofVolumes.includes(id)) expect(broken.get(slot), id).toBeUndefined();
	});
});

test('each quantity is known on some sheet', () => {
	const known = new Set<string>();
	eachQuantity(anySheet(questions, 'plausible', 0.95), ({ values }, slot, id) => {
		if (values[slot] !== undefined && values[slot] !== null) known.add(id);
	});
	// What a log gives is known only with a log: tests/log and tests/audit/boost-step hold those.
	const ofSheets = quantities.filter(({ id }) => !/^log\.|^boost\.next_/.test(id));
	expect(ofSheets.filter(({ id }) => !known.has(id)).map(({ id }) => id)).toEqual([]);
});
