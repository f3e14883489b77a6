import { describe, expect, test } from 'vitest';
import { answerTo, emptySheet, splitId, withAnswer } from '../../src/sheet/sheet.ts';

const gap = { value: 0.03, unit: 'in' } as const;

describe('a sheet', () => {
	test('gives the answer that it was given, and forgets it when asked to', () => {
		const sheet = withAnswer(emptySheet('x'), 'ignition.gap', gap);
		expect(answerTo(sheet, 'ignition.gap')).toBe(gap);
		expect(answerTo(withAnswer(sheet, 'ignition.gap', undefined), 'ignition.gap')).toBeUndefined();
		expect(answerTo(sheet, 'ignition.kind')).toBeUndefined();
		expect(answerTo(sheet, 'boost.kind')).toBeUndefined();
	});

	test('is never changed itself', () => {
		const sheet = withAnswer(emptySheet('x'), 'ignition.gap', gap);
		const before = structuredClone(sheet);
		withAnswer(sheet, 'ignition.gap', { known: 'not-known' });
		withAnswer(sheet, 'ignition.gap', undefined);
		expect(sheet).toEqual(before);
	});

	test('keeps the place of an answer that changes', () => {
		const sheet = ['ignition.gap', 'ignition.kind', 'ignition.gap'].reduce(
			(now, id) => withAnswer(now, id, gap),
			emptySheet('x'),
		);
		expect(Object.keys(sheet.answers.ignition!)).toEqual(['gap', 'kind']);
	});

	test('answers nothing by way of what every object inherits', () => {
		for (const id of ['constructor.name', 'toString.length', 'engine.constructor', '__proto__.x'])
			expect(answerTo(withAnswer(emptySheet('x'), 'engine.bore', gap), id)).toBeUndefined();
	});
});

test('an id is a section and a name', () => {
	expect(splitId('engine.oil_pressure_at_3000')).toEqual(['engine', 'oil_pressure_at_3000']);
});
