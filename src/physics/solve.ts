import type { Bounded } from './bounded.ts';
import { OutOfRange } from './range.ts';

/** What is still spare at x: above 0 while all is well, 0 where it runs out; undefined where nothing is proven. */
export type Spare = (x: number) => number | undefined;

/** The share of the interval to which the end is found. */
const usualTolerance = 1e-9;

/** The first step away from a guess, as a share of the interval. */
const firstStep = 1 / 64;

/**
 * Where `spare` runs out as x goes up from `low` to `high`, to 1e-9 of the interval.
 *
 * Bound null: it is 0 at `value`. 'below', at `low`: it has run out there already. 'above': it lasts to `high`, or, where
 * `spare` stops being defined, to the last x at which it still is. Undefined: nothing is proven even at `low`.
 * A `guess` near the end and a coarser `tolerance` save steps. `spare` is taken to run out once, and to be defined from
 * `low` up to some x. Errors: OutOfRange when `high` is under `low`, or when `spare` gives NaN.
 * Method: Chandrupatla, Advances in Engineering Software 28 (1997): inverse quadratic steps, kept inside a bracket.
 */
export function runsOut(
	spare: Spare,
	low: number,
	high: number,
	guess?: number,
	tolerance: number = usualTolerance,
): Bounded | undefined {
	if (!(high >= low)) throw new OutOfRange('high end', high, `${low} or more`);
	const step = tolerance * (high - low);
	const guessed = guess !== undefined && guess > low && guess < high;
	let stride = guessed ? firstStep * (high - low) : high - low;
	let here = guessed ? guess : low;
	let atHere = look(spare, here);
	if (atHere === undefined) return guessed ? runsOut(spare, low, high, undefined, tolerance) : undefined;
	while (atHere > 0 && here < high) {
		const next = Math.min(high, here + stride);
		const atNext = look(spare, next);
		if (atNext === undefined) return edge(spare, here, atHere, next, step);
		if (atNext <= 0) return crossing(spare, here, atHere, next, atNext, step);
		here = next;
		atHere = atNext;
		stride *= 4;
	}
	if (atHere > 0) return { value: high, bound: 'above' };
	while (atHere < 0 && here > low) {
		const next = Math.max(low, here - stride);
		const atNext = look(spare, next);
		if (atNext === undefined) return undefined;
		if (atNext > 0) return crossing(spare, next, atNext, here, atHere, step);
		here = next;
		atHere = atNext;
		stride *= 4;
	}
	return { value: here, bound: atHere < 0 ? 'below' : null };
}

/** By how much a slope may still change, over what it changed in the step before. */
const safety = 16;

/** A place where what is spare is known already. */
export interface Known {
	readonly at: number;
	readonly spare: number;
}

/** Such a place, and the slope from there to the root of a like function. */
export interface Start extends Known {
	readonly chord: number;
}

/**
 * The root near a guess at which `spare` falls by about `slope` a unit, to about `tolerance` of `low` to `high`; undefined where
 * a few secant steps do not settle inside: then `runsOut` has to look. A step is the last one where it is that short, or as
 * much shorter than the slope has changed since the step before. `start` takes the place of the first. Errors: OutOfRange as
 * there.
 */
export function nearRoot(
	spare: Spare,
	guess: number,
	slope: number,
	low: number,
	high: number,
	tolerance: number,
	start?: Start,
): number | undefined {
	let here = guess;
	let steep = slope;
	let before = guess;
	let atBefore = 0;
	for (let steps = 0; steps < 5; steps++) {
		const atHere = look(spare, here);
		if (atHere === undefined) return undefined;
		let changed = 1;
		if (steps > 0) {
			const secant = (atHere - atBefore) / (here - before);
			changed = Math.abs(secant / steep - 1);
			steep = secant;
		} else if (start && here !== start.at) {
			const chord = (atHere - start.spare) / (here - start.at);
			changed = Math.abs(chord / start.chord - 1);
			steep = slope * (chord / start.chord);
		}
		const next = here - atHere / steep;
		if (!(next > low && next < high)) return undefined;
		if (Math.abs(next - here) * Math.min(1, safety * changed) <= tolerance * (high - low)) return next;
		before = here;
		atBefore = atHere;
		here = next;
	}
	return undefined;
}

/**
 * The root of `runsOut`, by secants from the low end and a place that is known: fewer looks where `spare` is smooth. Undefined
 * where they do not settle, or it has run out at the low end: then `runsOut` has to look. Errors: OutOfRange as there.
 */
export function fromKnown(
	spare: Spare,
	low: number,
	high: number,
	known: Known,
	tolerance: number = usualTolerance,
): number | undefined {
	if (!(known.at > low && known.at < high)) return undefined;
	const atLow = look(spare, low);
	if (atLow === undefined || atLow <= 0) return undefined;
	const chord = (known.spare - atLow) / (known.at - low);
	const guess = known.at - known.spare / chord;
	if (!(guess > low && guess < high)) return undefined;
	return nearRoot(spare, guess, chord, low, high, tolerance, { ...known, chord });
}

function look(spare: Spare, x: number): number | undefined {
	const value = spare(x);
	if (value !== undefined && Number.isNaN(value)) throw new OutOfRange('spare', value, 'a number');
	return value;
}

/** Halves toward the last x where `spare` is defined, as long as it is still above 0 there. */
function edge(spare: Spare, good: number, atGood: number, unproven: number, step: number): Bounded {
	for (;;) {
		const middle = good + (unproven - good) / 2;
		if (unproven - good <= step || middle <= good || middle >= unproven) return { value: good, bound: 'above' };
		const value = look(spare, middle);
		if (value === undefined) unproven = middle;
		else if (value <= 0) return crossing(spare, good, atGood, middle, value, step);
		else {
			good = middle;
			atGood = value;
		}
	}
}

/**
 * The root between `a` and `b`, whose values differ in sign; `c` is the point dropped last. Plain assignments, no lists taken
 * apart: an audit is over before the engine has optimized much, and until then each list is made.
 */
function crossing(spare: Spare, good: number, atGood: number, bad: number, atBad: number, step: number): Bounded {
	let a = bad;
	let fa = atBad;
	let b = good;
	let fb = atGood;
	let c = b;
	let fc = fb;
	for (;;) {
		const best = Math.abs(fa) < Math.abs(fb) ? a : b;
		const least = (step / 2 + 2 * Number.EPSILON * Math.abs(best)) / Math.abs(b - a);
		if (fa === 0 || !(least < 0.5)) return { value: best, bound: null };
		const x = a + Math.min(1 - least, Math.max(least, inverseStep(a, fa, b, fb, c, fc))) * (b - a);
		const value = look(spare, x);
		if (value === undefined) return fa > 0 ? edge(spare, a, fa, x, step) : edge(spare, b, fb, x, step);
		if (value > 0 === fa > 0) {
			c = a;
			fc = fa;
		} else {
			c = b;
			fc = fb;
			b = a;
			fb = fa;
		}
		a = x;
		fa = value;
	}
}

/** The share of the way from `a` to `b` where the parabola in y through the points is 0, if it is safe; else the middle. */
function inverseStep(a: number, fa: number, b: number, fb: number, c: number, fc: number): number {
	if (c === b) return Number.isFinite(fa - fb) ? fa / (fa - fb) : 0.5; // the first step: a straight line
	const along = (a - b) / (c - b);
	const up = (fa - fb) / (fc - fb);
	// Not safe where the parabola may turn back; false, too, when a value is infinite.
	if (!(up * up < along && (1 - up) ** 2 < 1 - along)) return 0.5;
	return (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
}
