import { expect, test } from 'vitest';
import type { Outcome } from '../../../src/expressions/tree.ts';
import { solve } from '../../../src/graph/solve.ts';
import { givenAnswers } from '../../../src/quantities/from-sheet.ts';
import { type Answer, type Sheet, withAnswer } from '../../../src/sheet/sheet.ts';
import { buildSheet, testModel } from '../../support/model.ts';

const { graph, rulebook } = testModel();
const inch = (value: number | undefined): Answer | undefined =>
	value === undefined ? undefined : { value, unit: 'in', known: 'measured' };

function meter(sheet: Sheet): { readonly scale: number; readonly assumed: readonly string[] } {
	const { values, assumed } = solve(graph, givenAnswers(sheet, rulebook.questions));
	const slot = graph.slotOf.get('sensors.meter')!;
	return { scale: (values[slot] as Outcome & { scale: number }).scale, assumed: assumed[slot]! };
}

/** An insert in a pipe with these bores; undefined is not asked yet. */
function insert(pipe: number | undefined, curve: number | undefined): Sheet {
	const kind = withAnswer(buildSheet('boosted'), 'sensors.meter_kind', { value: 'slot-insert' });
	const inPipe = withAnswer(kind, 'sensors.meter_pipe_bore', inch(pipe));
	return withAnswer(inPipe, 'sensors.meter_curve_bore', inch(curve));
}

test('a slot insert reads with the square of the bores; a bore that is not known is taken for the same, and that is said', () => {
	expect(meter(insert(3.5, 3))).toEqual({ scale: expect.closeTo((3.5 / 3) ** 2, 12), assumed: [] });
	expect(meter(insert(3.5, undefined))).toEqual({ scale: 1, assumed: ['sensors.meter_curve_bore'] });
	expect(meter(insert(undefined, 3))).toEqual({ scale: 1, assumed: ['sensors.meter_pipe_bore'] });
	expect(meter(insert(undefined, undefined))).toEqual({ scale: 1, assumed: ['sensors.meter_pipe_bore'] });
});

test('a full-bore meter asks for no bore', () => {
	const sheet = withAnswer(insert(undefined, undefined), 'sensors.meter_kind', { value: 'full-bore' });
	expect(meter(sheet)).toEqual({ scale: 1, assumed: [] });
});
