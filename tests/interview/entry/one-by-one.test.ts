import { describe, expect, test } from 'vitest';
import { halfTyped, leave, start } from '../../../src/interview/session.ts';
import type { State } from '../../../src/interview/state.ts';
import { step } from '../../../src/interview/step.ts';
import { answerTo, emptySheet } from '../../../src/sheet/sheet.ts';
import { testModel } from '../../support/model.ts';

const at = (id: string): State => ({ ...start(testModel(), emptySheet('mule'), 'full'), at: id });
const typed = (state: State, ...lines: string[]): State =>
	lines.reduce((now, text) => step(now, { do: 'enter', text }), state);
const value = (state: State, id: string) => answerTo(state.sheet, id)?.value;

describe('readings one by one', () => {
	const id = 'engine.compression';

	test('each goes on to the next cylinder, a dash is one that was not measured, the last makes the answer', () => {
		const begun = typed(at(id), '150', '-', '152 149');
		expect(begun.at).toBe(id);
		expect(begun.said?.text).toBe('Cylinder 4: 149. Cylinder 5 of 8?');
		const done = typed(begun, '151 psi', '150', '150', '148 measured');
		expect(answerTo(done.sheet, id)).toEqual({
			value: [150, null, 152, 149, 151, 150, 150, 148],
			unit: 'psi',
			known: 'measured',
		});
		expect(done.begun).toEqual([]);
	});

	test('how they are known may be said at any of them', () => {
		const done = typed(at(id), '150 measured', '150', '150', '150', '150', '150', '150', '150');
		expect(answerTo(done.sheet, id)?.known).toBe('measured');
	});

	test('one that cannot be is refused at once, and those before it stand', () => {
		const wrong = typed(at(id), '150', '99999');
		expect(wrong.said?.kind).toBe('problem');
		expect(wrong.begun).toEqual(['150']);
		expect(typed(wrong, 'wet').begun).toEqual(['150']);
		expect(typed(wrong, '').said?.text).toContain('1 reading, 8 wanted');
	});

	test('the last one can be taken back, and all are found again after leaving', () => {
		const begun = typed(at(id), '150', '151');
		expect(step(begun, { do: 'take-back' }).begun).toEqual(['150']);
		expect(halfTyped(begun, '15')).toBe('150 151 15');
		expect(leave(begun, '15').draft).toMatchObject({ id, text: '150 151 15' });
		expect(step(begun, { do: 'later' }).begun).toEqual([]);
	});
});

test('a firing order cylinder by cylinder; one that fired already is refused', () => {
	const id = 'engine.firing_order';
	const begun = typed(at(id), '1', '8', '8');
	expect(begun.said?.text).toBe('Cylinder 8 stands there already.');
	expect(value(typed(begun, '4', '3', '6', '5-7', '2'), id)).toEqual([1, 8, 4, 3, 6, 5, 7, 2]);
});

test('points of a curve one by one, until a line with nothing on it', () => {
	const id = 'sensors.meter_curve';
	const begun = typed(at(id), '0.6 15', '1.5 90', '5 1100');
	expect(begun.at).toBe(id);
	expect(value(typed(begun, ''), id)).toEqual([
		[0.6, 15],
		[1.5, 90],
		[5, 1100],
	]);
	expect(value(typed(at(id), '0.6 15, 1.5 90'), id)).toHaveLength(2);
	expect(typed(at(id), '0.6 15', '').said?.text).toContain('One point is no curve');
});

test('loads, codes and circuits go on after a comma or a bar; without one a line is the whole', () => {
	expect(value(typed(at('charging.loads'), 'fans 28,', 'pump 9', ''), 'charging.loads')).toEqual([
		['fans', 28],
		['pump', 9],
	]);
	expect(value(typed(at('charging.loads'), 'fans 28'), 'charging.loads')).toEqual([['fans', 28]]);
	expect(value(typed(at('harness.codes'), 'P0340,', 'P0171', ''), 'harness.codes')).toEqual(['P0340', 'P0171']);
	expect(value(typed(at('harness.circuits'), 'lamp;;;done |', 'fan;;;to-do', ''), 'harness.circuits')).toHaveLength(2);
});

test('what is offered is taken by Enter, or by the same line once more; another line is read anew', () => {
	const id = 'engine.displacement_stated';
	const offered = typed(at(id), '5.4');
	expect(offered.said?.text).toBe('Is 5.4 L, 330 cu in meant? Enter takes it; or type it anew.');
	for (const line of ['', '5.4']) expect(value(typed(offered, line), id)).toBe(5.4);
	expect(answerTo(typed(offered, '340').sheet, id)).toMatchObject({ value: 340, unit: 'cu in' });
});
