import type { Value } from '../expressions/tree.ts';
import { nineOfTen } from '../graph/uncertain.ts';

/** What a log says of one quantity, in the canonical unit. */
export interface Measured {
	/** Undefined: the log does not show. Null: it does not apply here. */
	readonly value: Value | undefined | null;
	/** 5 and 95 %, with the sensor's error. */
	readonly low: number | null;
	readonly high: number | null;
	/** Channels and answers that would show it; `pull`: a longer one would. */
	readonly missing: readonly string[];
}

/** A number with its standard deviation. */
export function measured(value: number | undefined, deviation = 0, missing: readonly string[] = []): Measured {
	if (value === undefined || !Number.isFinite(value))
		return lacking(...(missing.length > 0 ? missing : ['engine_speed']));
	return { value, low: value - nineOfTen * deviation, high: value + nineOfTen * deviation, missing: [] };
}

/** The standard deviation that a band of 5 to 95 % stands for; 0 without a band. */
export const deviationOf = ({ low, high }: Pick<Measured, 'low' | 'high'>): number =>
	low === null || high === null ? 0 : (high - low) / 2 / nineOfTen;

/** What the log does not show, and what it would need. */
export const lacking = (...missing: readonly string[]): Measured => ({
	value: undefined,
	low: null,
	high: null,
	missing,
});

/** Does not apply to this car or pull. */
export const notApplicable: Measured = { value: null, low: null, high: null, missing: [] };

/** A yes or no, a list, words: without a band. */
export const exactly = (value: Value | undefined, ...missing: readonly string[]): Measured => ({
	value,
	low: null,
	high: null,
	missing: value !== undefined ? [] : missing.length > 0 ? missing : ['engine_speed'],
});
