import { expect, test } from 'vitest';
import { readCell, readClock, readInstant } from '../../src/table/cell.ts';

test('thousands by commas, spaces, apostrophes and points, where the decimals allow it', () => {
	expect(['12,500', '1 234 567.5', "1'000", '1,5', '12,50'].map(cell => readCell(cell, '.'))).toEqual([
		12_500,
		1_234_567.5,
		1000,
		undefined,
		undefined,
	]);
	expect(['12.500', '1 234,5', '1,5', '1.5'].map(cell => readCell(cell, ','))).toEqual([
		12_500,
		1234.5,
		1.5,
		undefined,
	]);
});

test('what is no finite number is unreadable, not infinite', () => {
	for (const cell of ['1e999', '-1e999', 'Infinity', '0x10', '1_000', '1 2', '12 V'])
		expect(readCell(cell, '.')).toBeUndefined();
});

test('clocks', () => {
	expect(['0:01', '12:30:00.25', '100:00:00', '1:2:3', '12', ''].map(readClock)).toEqual([
		1,
		45_000.25,
		360_000,
		undefined,
		undefined,
		Number.NaN,
	]);
});

// Against the language's own reading of ISO 8601.
test('instants as ISO 8601 writes them', () => {
	for (const text of ['2024-02-29T23:59:59.125Z', '2018-05-03T21:06:06+02:00', '1999-12-31T00:00:00.5-05:30']) {
		expect(readInstant(text)).toBeCloseTo(Date.parse(text) / 1000, 6);
	}
	expect(readInstant('20180503T210606')).toBe(Date.parse('2018-05-03T21:06:06Z') / 1000);
	expect(readInstant('2018-05-03 21:06:06,5')).toBe(Date.parse('2018-05-03T21:06:06.5Z') / 1000);
	expect(readInstant('yesterday')).toBeUndefined();
});
