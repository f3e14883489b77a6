import fc from 'fast-check';
import { expect } from 'vitest';
import { OutOfRange } from '../../src/physics/range.ts';

/** Runs of every property test of this room: fixed, so that a red one stays red. */
export const seeded = { seed: 1976, numRuns: 300 };

/** A number from `min` to `max`. */
export const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Spoils each argument in turn with what no physical number can be: the call must be refused, and the argument named. */
export function expectRefusals(
	call: (...args: number[]) => unknown,
	good: Readonly<Record<string, number>>,
	bad: readonly number[] = [Number.NaN, -1e9, Number.POSITIVE_INFINITY],
): void {
	const args = Object.values(good);
	expect(() => call(...args)).not.toThrow();
	for (const [i, name] of Object.keys(good).entries())
		for (const value of bad) {
			const error = caught(() => call(...args.with(i, value)));
			expect(error, `${name} of ${value}`).toBeInstanceOf(OutOfRange);
			expect(error).toMatchObject({ what: name, found: value });
		}
}

/** Takes both ends of a range and refuses what lies just outside them. */
export function expectRange(call: (value: number) => unknown, name: string, low: number, high: number): void {
	const step = 1e-6 * (high - low);
	for (const end of [low, high]) expect(() => call(end)).not.toThrow();
	for (const outside of [low - step, high + step]) expect(() => call(outside)).toThrow(name);
}

function caught(call: () => unknown): unknown {
	try {
		return call();
	} catch (error) {
		return error;
	}
}
