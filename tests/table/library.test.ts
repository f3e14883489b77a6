import { csvParseRows } from 'd3-dsv';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { seed } from '../counts.ts';
import { numbers, open } from './support.ts';

const number = fc.oneof(
	fc.integer({ min: -99_999, max: 99_999 }).map(String),
	fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }).map(value => value.toFixed(3)),
	fc.double({ noNaN: true, noDefaultInfinity: true }).map(String),
	fc.constantFrom('', '0', '-0.0', '00012.50', '123456789012345678', '0.1234567890123456789', '5.', '.5', '1e3'),
);
const quoted = (cell: string, how: number) => (how === 0 ? `"${cell}"` : cell);

/** Compared with a CSV library and the language's own reading of numbers: the same cells give the same bits. */
test('plain and quoted cells give what d3-dsv and Number give', async () => {
	const cell = fc.tuple(number, fc.integer({ min: 0, max: 9 })).map(([text, how]) => quoted(text, how));
	const table = fc.array(fc.tuple(fc.constant('1'), cell, cell, cell), { minLength: 3, maxLength: 20 });
	await fc.assert(
		fc.asyncProperty(table, fc.integer({ min: 1, max: 40 }), fc.constantFrom('\n', '\r\n'), async (rows, size, end) => {
			const text = ['a,b,c,d', ...rows.map(row => row.join(','))].join(end);
			const expected = csvParseRows(text)
				.slice(1)
				.map(row => row.map(cell => (cell === '' ? Number.NaN : Number(cell) + 0)));
			const found = await numbers(await open(text, size));
			expect(found.map(row => row.map(value => value + 0))).toEqual(expected);
		}),
		{ seed, numRuns: 300 },
	);
});
