import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OutOfRange } from '../../src/physics/range.ts';
import { fromKnown, nearRoot, runsOut, type Spare } from '../../src/physics/solve.ts';
import { between, seeded } from './spoilt.ts';

/** The same by halving alone, for a spare that is defined everywhere. */
function byHalving(spare: (x: number) => number, low: number, high: number): number {
	for (let step = 0; step < 200; step++) {
		const middle = (low + high) / 2;
		if (spare(middle) > 0) low = middle;
		else high = middle;
	}
	return low;
}

describe('where something runs out', () => {
	test('is found where it comes to nothing', () => {
		expect(runsOut(x => 2 - x * x, 0, 40)).toMatchObject({ value: expect.closeTo(Math.SQRT2, 7), bound: null });
	});

	test('is at the low end, marked below, when it has run out already', () => {
		expect(runsOut(x => -1 - x, 3, 10)).toEqual({ value: 3, bound: 'below' });
		expect(runsOut(x => -1 - x, 3, 10, 5)).toEqual({ value: 3, bound: 'below' });
	});

	test('is at the high end, marked above, when it lasts', () => {
		expect(runsOut(() => 1, 3, 10)).toEqual({ value: 10, bound: 'above' });
		expect(runsOut(() => 1, 3, 10, 5)).toEqual({ value: 10, bound: 'above' });
	});

	test('is exact at either end', () => {
		expect(runsOut(x => 3 - x, 3, 10)).toEqual({ value: 3, bound: null });
		expect(runsOut(x => 10 - x, 3, 10)).toEqual({ value: 10, bound: null });
		expect(runsOut(x => 3 - x, 3, 3)).toEqual({ value: 3, bound: null });
	});

	test('is the last proven x, marked above, when nothing more is proven while some is left', () => {
		const spare: Spare = x => (x <= 6 ? 10 - x : undefined);
		const found = runsOut(spare, 0, 40)!;
		expect(found.bound).toBe('above');
		expect(found.value).toBeLessThanOrEqual(6);
		expect(found.value).toBeCloseTo(6, 6);
		expect(runsOut(spare, 0, 40, 5)!.value).toBeCloseTo(6, 6);
		expect(runsOut(spare, 0, 40, 8)!.value).toBeCloseTo(6, 6);
	});

	test('is still found when it runs out before that', () => {
		const spare: Spare = x => (x <= 6 ? 5 - x : undefined);
		expect(runsOut(spare, 0, 40)).toMatchObject({ value: expect.closeTo(5, 6), bound: null });
	});

	test('is honest about a hole inside the bracket', () => {
		const spare: Spare = x => (x < 4 ? 9 - x : x > 12 ? -1 : undefined);
		expect(runsOut(spare, 0, 16)).toMatchObject({ value: expect.closeTo(4, 6), bound: 'above' });
	});

	test('cannot be decided when nothing is proven at the start', () => {
		expect(runsOut(() => undefined, 0, 1)).toBeUndefined();
		expect(runsOut(x => (x < 0.5 ? undefined : 0.6 - x), 0, 1)).toBeUndefined();
		expect(runsOut(x => (x < 0.5 ? undefined : -1), 0, 1, 0.7)).toBeUndefined();
	});

	test('copes with a jump, and with a value that has no end', () => {
		expect(runsOut(x => (x < 0.3 ? 1 : -1), 0, 1)!.value).toBeCloseTo(0.3, 8);
		expect(runsOut(x => (x < 1 ? 0.5 - 0.2 / (1 - x) : Number.NEGATIVE_INFINITY), 0, 2)!.value).toBeCloseTo(0.6, 8);
	});

	test('never looks outside its two ends', () => {
		for (const end of [-5, 0.01, 0.99, 5])
			for (const guess of [undefined, 0.02, 0.5, 0.98]) {
				const looked: number[] = [];
				const spare = (x: number) => {
					looked.push(x);
					return end - x;
				};
				runsOut(spare, 0, 1, guess);
				expect(Math.min(...looked)).toBeGreaterThanOrEqual(0);
				expect(Math.max(...looked)).toBeLessThanOrEqual(1);
			}
	});

	test('refuses ends that are crossed, and a spare that is not a number', () => {
		expect(() => runsOut(x => x, 1, 0)).toThrow(OutOfRange);
		expect(() => runsOut(() => Number.NaN, 0, 1)).toThrow('spare is NaN');
	});

	test('agrees with plain halving on falling functions of many shapes, with and without a guess', () => {
		const shape = fc.tuple(between(0.05, 0.95), between(0.2, 5), between(1e-6, 1e6), between(0, 1));
		fc.assert(
			fc.property(shape, ([end, power, size, guess]) => {
				const spare = (x: number) => size * (end ** power - x ** power) * Math.exp(-3 * x);
				const expected = byHalving(spare, 0, 1);
				expect(runsOut(spare, 0, 1)!.value).toBeCloseTo(expected, 8);
				expect(runsOut(spare, 0, 1, guess)!.value).toBeCloseTo(expected, 8);
			}),
			seeded,
		);
	});

	test('takes few looks: at most 11 on a steep limit, at most 6 with a good guess', () => {
		const looks = (guess?: number) => {
			let count = 0;
			const spare = (x: number) => {
				count++;
				return 0.85 - 0.3 * Math.exp(x / 1e5) ** 2;
			};
			expect(runsOut(spare, 0, 275790, guess)!.value).toBeCloseTo(0.5e5 * Math.log(0.85 / 0.3), 3);
			return count;
		};
		expect(looks()).toBeLessThanOrEqual(11);
		expect(looks(52000)).toBeLessThanOrEqual(6);
	});
});

describe('a root near a guess', () => {
	const spare = (x: number) => 9 - x * x;

	test('is found to far less than the tolerance, from either side', () => {
		for (const guess of [2.5, 2.9, 3.2]) expect(nearRoot(spare, guess, -6, 0, 10, 1e-3)).toBeCloseTo(3, 3);
	});

	test('is left to the full search where it lies outside, where nothing is proven, or where steps do not settle', () => {
		expect(nearRoot(spare, 2, -4, 0, 2.5, 1e-3)).toBeUndefined();
		expect(nearRoot(x => (x > 2 ? undefined : spare(x)), 1.9, -4, 0, 10, 1e-3)).toBeUndefined();
		expect(nearRoot(() => undefined, 2, -4, 0, 10, 1e-3)).toBeUndefined();
		expect(nearRoot(x => Math.cbrt(3 - x), 2.9, -1, 0, 10, 1e-6)).toBeUndefined();
	});
});

describe('from a place that is known', () => {
	test('the root is the one of the full search, on either side of it, in three quarters of its looks', () => {
		let looks = 0;
		const counted = (spare: (x: number) => number) => (x: number) => {
			looks++;
			return spare(x);
		};
		const total = { full: 0, short: 0, found: 0 };
		fc.assert(
			fc.property(between(0.3, 3), between(0.2, 0.8), between(0.05, 0.95), (power, end, at) => {
				const plain = (x: number) => (1 + end) ** power - (1 + x) ** power;
				looks = 0;
				const root = runsOut(counted(plain), 0, 1)!.value;
				total.full += looks;
				looks = 0;
				const found = fromKnown(counted(plain), 0, 1, { at, spare: plain(at) });
				total.short += looks;
				if (found === undefined) return;
				total.found++;
				expect(Math.abs(found - root)).toBeLessThan(2e-9);
			}),
			seeded,
		);
		expect(total.short).toBeLessThan(0.75 * total.full);
		expect(total.found).toBeGreaterThan(0.9 * seeded.numRuns);
		const plain = (x: number) => 8 - (1 + x) ** 3;
		for (const at of [1.2, 0.9]) expect(fromKnown(plain, 0, 2, { at, spare: plain(at) })).toBeCloseTo(1, 9);
	});

	test('there is none where it has run out at the low end, does not fall, or is known at an end alone', () => {
		expect(fromKnown(x => -1 - x, 0, 10, { at: 5, spare: -6 })).toBeUndefined();
		expect(fromKnown(x => 0 - x, 0, 10, { at: 5, spare: -5 })).toBeUndefined();
		expect(fromKnown(x => 1 + x, 0, 10, { at: 5, spare: 6 })).toBeUndefined();
		expect(fromKnown(x => x - 0.5, 0, 10, { at: 5, spare: 4.5 })).toBeUndefined();
		expect(fromKnown(() => 1, 0, 10, { at: 5, spare: 1 })).toBeUndefined();
		expect(fromKnown(x => 20 - x, 0, 10, { at: 5, spare: 15 })).toBeUndefined();
		for (const at of [0, 10]) expect(fromKnown(x => 5 - x, 0, 10, { at, spare: 5 - at })).toBeUndefined();
		expect(fromKnown(() => undefined, 0, 10, { at: 5, spare: 1 })).toBeUndefined();
	});

	test('never looks outside both ends', () => {
		for (const end of [0.01, 0.5, 0.99, 3]) {
			const spare = (x: number) => {
				expect(x >= 0 && x <= 1).toBe(true);
				return end * end - x * x;
			};
			fromKnown(spare, 0, 1, { at: 0.6, spare: spare(0.6) });
		}
	});
});
