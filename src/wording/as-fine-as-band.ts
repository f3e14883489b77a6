import { fromCanonical, toCanonical } from '../units/unit.ts';
import { unitFor } from './format.ts';
import type { Wording } from './template.ts';

/** A band is read in so many steps or more. */
const leastSteps = 15;

/**
 * Writes figures of a quantity no finer than its band is known, in steps of a power of ten of the person's unit: 2.4 psi of a band
 * 6 psi wide, 35 psi of one 16 wide. Without a band as any other value.
 */
export function asFineAsBand(
	wording: Wording,
	id: string,
	{ low, high }: { readonly low: number | null; readonly high: number | null },
): (value: number) => string {
	const unit = unitFor(wording.what(id, null), wording.units);
	const width = unit && low !== null && high !== null ? fromCanonical(high, unit) - fromCanonical(low, unit) : 0;
	if (!unit || !(width > 0)) return value => wording.show(id, value)!;
	const step = 10 ** Math.floor(Math.log10(width / leastSteps));
	return value => wording.show(id, toCanonical(Math.round(fromCanonical(value, unit) / step) * step, unit))!;
}

/** Where a limit lies, in words; "over" where the search for it ended before. */
export const limitWords = (
	wording: Wording,
	limit: string,
	{ value, bound, low, high }: { value: number; bound: string | null; low: number | null; high: number | null },
): string => `${bound === 'above' ? 'over ' : ''}${asFineAsBand(wording, limit, { low, high })(value)}`;
