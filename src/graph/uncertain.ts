import type { Outcome } from '../expressions/tree.ts';

/** Nine cases of ten lie within this many sigma either way. */
export const nineOfTen = 1.6449;

/** How one slot strays: its value made from its own and from standard normal deviates, one a dimension. */
export interface Uncertain {
	readonly slot: number;
	readonly dimensions: number;
	/** Slots of one name stray as one: the same figure printed twice, two figures read by one instrument. */
	readonly figure?: string;
	/** Whether a part of how it strays is its own even so: one more deviate. */
	readonly alone?: true;
	/** The spread about the nominal value in nine cases of ten, as a difference; for sensitivities. */
	readonly difference: number;
	/** `z` holds the deviates of every uncertain slot, this one's from `first` on; `alone` is its own, where it has one. */
	apply(value: Outcome, z: ArrayLike<number>, first: number, alone?: number): Outcome;
}

/** How far off a number may be, either way, in nine cases of ten: a difference, or a share of the value. */
export interface Spread {
	readonly by: number;
	readonly relative: boolean;
}

/** The spread as a difference, at a value. */
export const differenceOf = ({ by, relative }: Spread, value: number): number => (relative ? Math.abs(value) * by : by);

/** A number within a spread; never under `least`. */
export function spreadNumber(
	slot: number,
	spread: Spread,
	value: number,
	least: number = Number.NEGATIVE_INFINITY,
): Uncertain | null {
	const difference = differenceOf(spread, value);
	if (spread.by === 0) return null;
	const sigma = spread.by / nineOfTen;
	const apply: Uncertain['apply'] = spread.relative
		? (now, z, first) => (now as number) * (1 + sigma * z[first]!)
		: (now, z, first) => Math.max(least, (now as number) + sigma * z[first]!);
	return { slot, dimensions: 1, difference, apply };
}

/** A number within factors on it. They are lopsided: the ends are the twentieth and the last twentieth of the cases. */
export function bandedNumber(slot: number, [low, high]: readonly [number, number], value: number): Uncertain {
	const [down, up] = [Math.log(low) / nineOfTen, Math.log(high) / nineOfTen];
	return {
		slot,
		dimensions: 1,
		difference: (value * (high - low)) / 2,
		apply(now, z, first) {
			const deviate = z[first]!;
			return (now as number) * Math.exp(deviate < 0 ? -deviate * down : deviate * up);
		},
	};
}

const stray = ({ by, relative }: Spread, value: number, deviate: number): number => {
	const sigma = by / nineOfTen;
	return relative ? value * (1 + sigma * deviate) : value + sigma * deviate;
};

/**
 * Readings that stray one by one; null is a place without one. The highest stays the highest and the lowest the lowest: the
 * highest of eight that stray freely lies above the highest that was read in nearly every draw, so that its band would not
 * hold what was read in its middle. Where the two cross, both take the mean.
 */
export function spreadReadings(slot: number, spread: Spread, count: number): Uncertain {
	return {
		slot,
		dimensions: count,
		difference: 0,
		apply(now, z, first) {
			const readings = now as (number | null)[];
			const taken = readings.filter(reading => reading !== null);
			const [most, least] = [readings.indexOf(Math.max(...taken)), readings.indexOf(Math.min(...taken))];
			const strayed = (at: number) => stray(spread, readings[at]!, z[first + at]!);
			let [high, low] = [strayed(most), strayed(least)];
			if (high < low) high = low = (high + low) / 2;
			return readings.map((reading, at) => {
				if (reading === null) return null;
				return at === most ? high : at === least ? low : Math.min(high, Math.max(low, strayed(at)));
			});
		},
	};
}

/** Pairs whose second numbers stray together, as one scale. */
export function spreadPairs(slot: number, spread: Spread): Uncertain {
	return {
		slot,
		dimensions: 1,
		difference: 0,
		apply: (now, z, first) =>
			(now as (readonly [unknown, number])[]).map(point => [point[0], stray(spread, point[1], z[first]!)]),
	};
}
