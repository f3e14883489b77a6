import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numeralAt } from '../../src/units/numeral.ts';

const read = (text: string) => numeralAt(text)?.readings;

describe('a numeral', () => {
	it.each([
		['12', 12],
		['.035', 0.035],
		['-3', -3],
		['- 3', -3],
		['+3', 3],
		['5.', 5],
		['2e3', 2000],
		['1.5E-3', 0.0015],
		['1,5', 1.5],
		[',5', 0.5],
		['0,035', 0.035],
		['1,2345', 1.2345],
		['1234,567', 1234.567],
		['1.500', 1.5],
		['1,234.5', 1234.5],
		['1.234,5', 1234.5],
		['1,234,567', 1_234_567],
		['1.234.567', 1_234_567],
		['3/8', 0.375],
		['1 1/2', 1.5],
		['1-1/2', 1.5],
		['-1 1/2', -1.5],
		['15/16', 0.9375],
	])('%s has one reading', (text, value) => {
		expect(read(text)).toEqual([value]);
	});

	it.each([
		['1,500', 1500, 1.5],
		['12,000', 12_000, 12],
		['999,999', 999_999, 999.999],
		['-1,500', -1500, -1.5],
	])('%s has two, thousands first', (text, thousands, decimal) => {
		expect(read(text)).toEqual([thousands, decimal]);
	});

	it.each(['1,5,2', '1,23,456', '1.2.3', '0,123,456', '1,2.5', '1.5,5,5'])('%s has none', text => {
		expect(read(text)).toEqual([]);
	});

	it.each(['', '-', '.', 'abc', 'NaN', 'Infinity', '/8', '+-3', '٣'])('is not seen in "%s"', text => {
		expect(read(text)).toBeUndefined();
	});

	it('has no minus zero', () => {
		expect(Object.is(read('-0')?.[0], 0)).toBe(true);
	});

	it('leaves the text behind it', () => {
		expect(numeralAt('35 thou')?.rest).toBe('thou');
		expect(numeralAt('3/8"')?.rest).toBe('"');
		expect(numeralAt('9.5:1')?.rest).toBe(':1');
		expect(numeralAt('5.in')?.rest).toBe('in');
		expect(numeralAt('8-10')?.rest).toBe('-10');
	});

	it('is read as written for any plain decimal', () => {
		fc.assert(
			fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), value => {
				expect(read(value.toFixed(3))).toEqual([Number(value.toFixed(3)) + 0]);
			}),
			{ seed: 2, numRuns: 200 },
		);
	});
});
