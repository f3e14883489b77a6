import fc from 'fast-check';
import { expect, it, vi } from 'vitest';
import { significant } from '../../src/units/significant.ts';
import { seed } from '../counts.ts';

const asText = (value: number, digits: number) => Number(value.toPrecision(digits));

it('is what the language reads of the digits that it writes', () => {
	const short = fc.tuple(fc.integer({ min: -99999, max: 99999 }), fc.constantFrom(0.01, 0.0254, 6894.757, 1e-6, 1 / 3));
	const anything = fc.double({ noNaN: true, noDefaultInfinity: true });
	const value = fc.oneof(
		anything,
		fc.double({ min: 1e-9, max: 1e9, noNaN: true }),
		short.map(([typed, factor]) => typed * factor),
	);
	fc.assert(
		fc.property(value, fc.constantFrom(3, 12, 15), (any, digits) => {
			expect(significant(any, digits)).toBe(asText(any, digits));
		}),
		{ seed, numRuns: 5000 },
	);
});

it('is so beside powers of ten and halves of the last digit, where a product of its own would be one off', () => {
	const ulps = [-3, -2, -1, 0, 1, 2, 3];
	for (const digits of [3, 12, 15]) {
		for (let exponent = -12; exponent <= 24; exponent++) {
			for (const start of [10 ** exponent, (123.5 / 100) * 10 ** exponent, (1 + 5 * 10 ** -digits) * 10 ** exponent]) {
				for (const ulp of ulps) {
					const value = start * (1 + ulp * Number.EPSILON);
					expect(significant(value, digits), `${value}, ${digits}`).toBe(asText(value, digits));
				}
			}
		}
	}
});

it('takes zero and what is no number as they are', () => {
	for (const value of [0, -0, Number.POSITIVE_INFINITY, Number.NaN, 5e-324, Number.MAX_VALUE])
		expect(significant(value, 12)).toBe(asText(value, 12));
});

it('makes a text of less than one figure in a hundred: only where what is left of the digits lies near a half', () => {
	const text = vi.spyOn(Number.prototype, 'toPrecision');
	try {
		for (const size of [1e-6, 1e-3, 1, 10, 1e3, 1e6, 1e9])
			for (let part = 0; part < 300; part++) {
				significant((1 + part * 0.0299) * size, 12);
				if (size < 100) significant(-(1 + part * 0.0299) * size, 3);
			}
		expect(text.mock.calls.length).toBeLessThan(30);
	} finally {
		text.mockRestore();
	}
});
