import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { State } from '../../src/graph/solve.ts';
import { rangeOf } from '../../src/quantities/range.ts';
import { type Answer, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { counts, seed } from '../counts.ts';
import { testModel } from '../support/model.ts';
import { anySheet } from './any-sheet.ts';
import { stateOf } from './by-hand.ts';

const { quantities, rulebook } = testModel();
const { questions } = rulebook;

type Look = (state: State, slot: number, id: string) => string | null;

/** Looks at every quantity of many sheets: what is wrong with any is the list that must be empty. */
function eachQuantity(sheets: fc.Arbitrary<Sheet>, look: Look): void {
	fc.assert(
		fc.property(sheets, sheet => {
			const state = stateOf(sheet);
			const wrong = quantities.flatMap(({ id }) => look(state, state.graph.slotOf.get(id)!, id) ?? []);
			expect(wrong).toEqual([]);
		}),
		{ seed, numRuns: counts.sheets, endOnFailure: true },
	);
}

const ranges = new Map(quantities.map(quantity => [quantity.id, rangeOf(quantity)]));
const asked = new Set(questions.map(({ id }) => id));
// What a log gives is known only with a log: tests/log and tests/audit/boost-step hold those.
const ofSheets = quantities.map(({ id }) => id).filter(id => !/^log\.|^boost\.next_/.test(id));

/** Every number is finite, and one that the quantity can come to. */
const impossible: Look = ({ values }, slot, id) => {
	const [value, range] = [values[slot], ranges.get(id)];
	if (typeof value !== 'number' || !range) return null;
	const [least, most] = [range[0] ?? -Infinity, range[1] ?? Infinity];
	return Number.isFinite(value) && value >= least && value <= most ? null : `${id}: ${value}, not ${least} to ${most}`;
};

/** What is not known says which answers are missing, by the names of questions, or what it could not take. */
const unexplained: Look = ({ values, missing, broken }, slot, id) => {
	if (values[slot] !== undefined) return null;
	const strange = missing[slot]!.filter(answer => !asked.has(answer));
	if (strange.length > 0) return `${id} lacks ${strange.join(', ')}, which nobody is asked`;
	return (broken.has(slot) ? broken.get(slot) !== '' : missing[slot]!.length > 0) ? null : `${id}: no word of why`;
};

test.each([
	['plausible', 0.95, ofSheets],
	['plausible', 0.4, []],
	['hard', 0.95, []],
] as const)(
	'whatever the answers, inside their %s ranges, %d of them given: every number is possible, what is not known is explained',
	(range, share, mustBeKnown) => {
		const known = new Set<string>();
		eachQuantity(anySheet(questions, range, share), (state, slot, id) => {
			if (state.values[slot] !== undefined && state.values[slot] !== null) known.add(id);
			return impossible(state, slot, id) ?? unexplained(state, slot, id);
		});
		// Most answers given, each quantity is known on some sheet.
		expect(mustBeKnown.filter(id => !known.has(id))).toEqual([]);
	},
);

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
	eachQuantity(answered, ({ broken }, slot, id) =>
		broken.has(slot) && !ofVolumes.includes(id) ? `${id}: ${broken.get(slot)}` : null,
	);
});
