import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { makeCurve, type Point } from '../../src/physics/interpolate.ts';
import { OutOfRange } from '../../src/physics/range.ts';
import { seeded } from './spoilt.ts';

const step = fc.double({ min: 0.05, max: 10, noNaN: true });
const rise = fc.double({ min: 0, max: 50, noNaN: true });

/** Curves that never fall, of 2 to 9 points. */
const rising = fc.array(fc.tuple(step, rise), { minLength: 2, maxLength: 9 }).map(steps => {
	const points: Point[] = [];
	let [x, y] = [0, 0];
	for (const [dx, dy] of steps) {
		x += dx;
		y += dy;
		points.push([x, y]);
	}
	return points;
});

const strictly = rising.map(points => points.map(([x, y], i): Point => [x, y + (i + 1) / 10]));
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('a curve through measured points', () => {
	test('goes through each of them', () => {
		fc.assert(
			fc.property(rising, points => {
				const curve = makeCurve(points);
				for (const [x, y] of points) expect(curve.at(x)).toBeCloseTo(y, 10);
			}),
			seeded,
		);
	});

	test('never falls where its points do not, and never leaves the range of its two neighbours', () => {
		fc.assert(
			fc.property(rising, points => {
				const curve = makeCurve(points);
				for (const [i, [x, y]] of points.slice(1).entries()) {
					const [fromX, fromY] = points[i]!;
					let before = fromY;
					for (let k = 1; k <= 20; k++) {
						const here = curve.at(fromX + ((x - fromX) * k) / 20);
						expect(here).toBeGreaterThanOrEqual(before - 1e-9);
						expect(here).toBeLessThanOrEqual(y + 1e-9);
						before = here;
					}
				}
			}),
			seeded,
		);
	});

	test('meets the condition of Fritsch & Carlson at every point: slope at most 3 times either secant', () => {
		fc.assert(
			fc.property(strictly, points => {
				const curve = makeCurve(points);
				for (let i = 1; i < points.length; i++) {
					const [[x0, y0], [x1, y1]] = [points[i - 1]!, points[i]!];
					const tiny = (x1 - x0) * 1e-6;
					const secant = (y1 - y0) / (x1 - x0);
					const leave = (curve.at(x0 + tiny) - y0) / tiny;
					const arrive = (y1 - curve.at(x1 - tiny)) / tiny;
					expect(Math.min(leave, arrive)).toBeGreaterThanOrEqual(-1e-3 * secant);
					expect(Math.max(leave, arrive)).toBeLessThanOrEqual(3.001 * secant);
				}
			}),
			seeded,
		);
	});

	test('is a straight line through two points, and through points on a line', () => {
		expect(makeCurve([[1, 10], [3, 30]]).at(2.5)).toBeCloseTo(25, 12); // biome-ignore format: pairs
		expect(makeCurve([[0, 0], [1, 2], [5, 10]]).at(3.3)).toBeCloseTo(6.6, 12); // biome-ignore format: pairs
	});

	test('undoes itself', () => {
		fc.assert(
			fc.property(strictly, share, (points, s) => {
				const curve = makeCurve(points);
				const x = points[0]![0] + s * (points.at(-1)![0] - points[0]![0]);
				const y = curve.at(x);
				expect(curve.inverse(y).bound).toBeNull();
				expect(curve.at(curve.inverse(y).value)).toBeCloseTo(y, 9);
			}),
			seeded,
		);
	});

	test('undoes itself when it falls, too', () => {
		fc.assert(
			fc.property(strictly, share, (points, s) => {
				const falling = makeCurve(points.map(([x, y]): Point => [x, -y]));
				const y = -points[0]![1] - s * (points.at(-1)![1] - points[0]![1]);
				expect(falling.at(falling.inverse(y).value)).toBeCloseTo(y, 9);
			}),
			seeded,
		);
	});

	test('gives the lowest x on a level part', () => {
		const curve = makeCurve([
			[0, 0],
			[1, 5],
			[3, 5],
			[4, 9],
		]);
		expect(curve.inverse(5)).toEqual({ value: 1, bound: null });
	});
});

describe('past its ends', () => {
	const up = makeCurve([
		[0.6, 15],
		[2, 165],
		[5, 1130],
	]);
	const down = makeCurve([
		[30, 80],
		[50, 69],
		[70, 50],
	]);

	test('a curve is held, and says which end', () => {
		expect(up.at(0.1)).toBe(15);
		expect(up.at(9)).toBe(1130);
		expect([up.beyond(0.1), up.beyond(0.6), up.beyond(3), up.beyond(5), up.beyond(9)]).toEqual([
			'first',
			null,
			null,
			null,
			'last',
		]);
		expect([up.first, up.last]).toEqual([
			[0.6, 15],
			[5, 1130],
		]);
	});

	test('its inverse gives the end and the side on which the true x lies, rising or falling', () => {
		expect(up.inverse(2000)).toEqual({ value: 5, bound: 'above' });
		expect(up.inverse(1130.001)).toEqual({ value: 5, bound: 'above' });
		expect(up.inverse(3)).toEqual({ value: 0.6, bound: 'below' });
		expect(down.inverse(90)).toEqual({ value: 30, bound: 'below' });
		expect(down.inverse(40)).toEqual({ value: 70, bound: 'above' });
	});

	test('its inverse at an end is that end, without a bound', () => {
		expect(up.inverse(15)).toEqual({ value: 0.6, bound: null });
		expect(up.inverse(1130)).toEqual({ value: 5, bound: null });
		expect(down.inverse(50)).toEqual({ value: 70, bound: null });
	});
});

describe('no curve', () => {
	test.each<[string, Point[]]>([
		['of one point', [[1, 1]]],
		['that goes back', [[1, 1], [1, 2]]], // biome-ignore format: pairs
		['with a hole in x', [[1, 1], [Number.NaN, 2]]], // biome-ignore format: pairs
		['with a hole in y', [[1, Number.NaN], [2, 2]]], // biome-ignore format: pairs
		['without an end', [[1, 1], [2, Number.POSITIVE_INFINITY]]], // biome-ignore format: pairs
	])('is made %s', (_, points) => {
		expect(() => makeCurve(points)).toThrow(OutOfRange);
	});

	test('is turned round that rises and falls, or is flat', () => {
		const turning = makeCurve([[0, 0], [1, 2], [2, 1]]); // biome-ignore format: pairs
		const flat = makeCurve([[0, 3], [1, 3]]); // biome-ignore format: pairs
		expect(() => turning.inverse(1)).toThrow(OutOfRange);
		expect(() => flat.inverse(3)).toThrow(OutOfRange);
		expect(turning.at(1)).toBe(2);
	});
});

test('an end piece before a sharp turn leaves at three times its own slope at most, and so keeps inside its two points', () => {
	const curve = makeCurve([
		[0, 0],
		[1, 2],
		[1.1, 0],
	]);
	// Hermite by hand: leaves at 6, arrives at 0.
	expect(curve.at(0.5)).toBeCloseTo(1.75, 12);
	for (let x = 0; x <= 1; x += 0.01) expect(curve.at(x)).toBeLessThanOrEqual(2 + 1e-12);
});
