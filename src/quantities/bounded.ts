import { Bounded } from '../graph/bounded.ts';
import type { Bounded as BoundedNumber } from '../physics/bounded.ts';

/** A result of the physics room as a quantity's outcome: a number, or a number that is only known as a bound. */
export function bounded(found: BoundedNumber | undefined): number | Bounded | undefined {
	if (found === undefined) return undefined;
	return found.bound ? new Bounded(found.value, found.bound) : found.value;
}
