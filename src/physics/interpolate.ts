import type { Bounded } from './bounded.ts';
import { OutOfRange } from './range.ts';

/** A point of a measured curve: x, y. */
export type Point = readonly [x: number, y: number];

/** A smooth curve through measured points, which never leaves the range of its two neighbors and never goes past its ends. */
export interface Curve {
	readonly first: Point;
	readonly last: Point;
	/** y at x; outside it is held at that end's y. */
	at(x: number): number;
	/** The end that x lies beyond, or null. */
	beyond(x: number): 'first' | 'last' | null;
	/** The lowest x with that y. A y that the curve does not reach gives the end, with the side on which the true x lies. */
	inverse(y: number): Bounded;
}

/**
 * Monotone piecewise cubic through two points or more, x rising. Build it once: it works out its slopes here.
 *
 * Errors: OutOfRange for fewer points, x not rising, a number that is not finite; `inverse` throws it when y both rises
 * and falls, or never changes. Method: Fritsch & Carlson, SIAM J. Numer. Anal. 17 (1980), slopes by Fritsch & Butland,
 * SIAM J. Sci. Stat. Comput. 5 (1984): the weighted harmonic mean, 0 at a turning point.
 */
export function makeCurve(points: readonly Point[]): Curve {
	if (points.length < 2) throw new OutOfRange('points of a curve', points.length, '2 or more');
	// Plain loops here and in the slopes: a curve is made anew in every draw.
	const xs = new Float64Array(points.length);
	const ys = new Float64Array(points.length);
	for (let i = 0; i < points.length; i++) {
		const x = points[i]![0];
		const y = points[i]![1];
		if (!Number.isFinite(x) || (i > 0 && x <= xs[i - 1]!)) throw new OutOfRange('x of a curve', x, 'rising numbers');
		if (!Number.isFinite(y)) throw new OutOfRange('y of a curve', y, 'numbers');
		xs[i] = x;
		ys[i] = y;
	}
	const slopes = slopesOf(xs, ys);
	const end = xs.length - 1;
	const way = directionOf(ys);

	/** y at a share t of the piece that ends at point i: Hermite's cubic. */
	const piece = (i: number, t: number): number => {
		const h = xs[i]! - xs[i - 1]!;
		const rise = ys[i]! - ys[i - 1]!;
		const leave = slopes[i - 1]! * h;
		const arrive = slopes[i]! * h;
		return ys[i - 1]! + t * (leave + t * (3 * rise - 2 * leave - arrive + t * (leave + arrive - 2 * rise)));
	};

	return {
		first: [xs[0]!, ys[0]!],
		last: [xs[end]!, ys[end]!],
		at(x) {
			if (x <= xs[0]!) return ys[0]!;
			if (x >= xs[end]!) return ys[end]!;
			const i = firstReaching(xs, x, 1);
			return piece(i, (x - xs[i - 1]!) / (xs[i]! - xs[i - 1]!));
		},
		beyond: x => (x < xs[0]! ? 'first' : x > xs[end]! ? 'last' : null),
		inverse(y) {
			if (way === 0) throw new OutOfRange('y of a curve', y, 'a curve that rises all the way, or falls all the way');
			if (way * (y - ys[0]!) <= 0) return { value: xs[0]!, bound: y === ys[0] ? null : 'below' };
			if (way * (y - ys[end]!) > 0) return { value: xs[end]!, bound: 'above' };
			const i = firstReaching(ys, y, way);
			const t = y === ys[i] ? 1 : shareAt(t => way * (piece(i, t) - y));
			return { value: xs[i - 1]! + t * (xs[i]! - xs[i - 1]!), bound: null };
		},
	};
}

/** 1 for a curve that never falls, -1 for one that never rises, 0 for neither or flat. */
function directionOf(ys: Float64Array): number {
	let up = false;
	let down = false;
	for (let i = 1; i < ys.length; i++) {
		up ||= ys[i]! > ys[i - 1]!;
		down ||= ys[i]! < ys[i - 1]!;
	}
	return up === down ? 0 : up ? 1 : -1;
}

function slopesOf(xs: Float64Array, ys: Float64Array): Float64Array {
	const end = xs.length - 1;
	const width = (i: number) => xs[i + 1]! - xs[i]!;
	const secant = (i: number) => (ys[i + 1]! - ys[i]!) / width(i);
	const slopes = new Float64Array(xs.length).fill(secant(0));
	if (end === 1) return slopes;
	for (let i = 1; i < end; i++) slopes[i] = inner(width(i - 1), width(i), secant(i - 1), secant(i));
	slopes[0] = outer(width(0), width(1), secant(0), secant(1));
	slopes[end] = outer(width(end - 1), width(end - 2), secant(end - 1), secant(end - 2));
	return slopes;
}

/** Slope between two pieces. */
function inner(before: number, after: number, left: number, right: number): number {
	if (!(left * right > 0)) return 0;
	const heavy = 2 * after + before;
	const light = after + 2 * before;
	return (heavy + light) / (heavy / left + light / right);
}

/** Slope at an end: the parabola's through the three nearest points, cut back so that the piece stays monotone. */
function outer(near: number, next: number, secant: number, further: number): number {
	const slope = ((2 * near + next) * secant - near * further) / (near + next);
	if (slope * secant <= 0) return 0;
	return secant * further <= 0 && Math.abs(slope) > 3 * Math.abs(secant) ? 3 * secant : slope;
}

/** The lowest index above 0 where a list that rises (`way` 1) or falls (-1) has come to a value; it has at its end. */
function firstReaching(list: Float64Array, value: number, way: number): number {
	let low = 1;
	let high = list.length - 1;
	while (low < high) {
		const middle = (low + high) >> 1;
		if (way * (list[middle]! - value) >= 0) high = middle;
		else low = middle + 1;
	}
	return low;
}

/** The share from 0 to 1 where a rising function crosses 0: false position that halves the weight of a side that stays (Illinois). */
function shareAt(f: (t: number) => number): number {
	let low = 0;
	let high = 1;
	let atLow = f(low);
	let atHigh = f(high);
	let stayed = 0;
	for (let step = 0; ; step++) {
		const t = low - (atLow * (high - low)) / (atHigh - atLow);
		if (!(t > low && t < high) || step === 200) return t;
		const value = f(t);
		if (value === 0) return t;
		if (value < 0) {
			low = t;
			atLow = value;
			if (stayed === 1) atHigh /= 2;
			stayed = 1;
		} else {
			high = t;
			atHigh = value;
			if (stayed === -1) atLow /= 2;
			stayed = -1;
		}
	}
}
