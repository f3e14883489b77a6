import { expect, test } from 'vitest';
import { banksIn } from '../../src/interview/banks.ts';
import { emptySheet, withAnswer } from '../../src/sheet/sheet.ts';

const laidOut = (layout: string, cylinders = 8) =>
	banksIn(
		withAnswer(withAnswer(emptySheet('mule'), 'engine.bank_layout', { value: layout }), 'engine.cylinders', {
			value: cylinders,
		}),
	);

test('cylinders stand as the engine numbers them, whatever the firing order', () => {
	expect(laidOut('in-rows')).toEqual([
		[1, 2, 3, 4],
		[5, 6, 7, 8],
	]);
	expect(laidOut('odd-and-even')).toEqual([
		[1, 3, 5, 7],
		[2, 4, 6, 8],
	]);
	expect(laidOut('odd-and-even', 6)).toEqual([
		[1, 3, 5],
		[2, 4, 6],
	]);
});

test('while the layout is not known they stand by number', () => {
	expect(banksIn(emptySheet('mule'))).toEqual([[1, 2, 3, 4, 5, 6, 7, 8]]);
});
