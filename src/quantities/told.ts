import type { Bounded as BoundedNumber } from '../physics/bounded.ts';
import { Bounded } from './quantity.ts';

/** A result of the physics room as a quantity's outcome: a number, or a number that is only known as a bound. */
export function told(found: BoundedNumber | undefined): number | Bounded | undefined {
	if (found === undefined) return undefined;
	return found.bound ? new Bounded(found.value, found.bound) : found.value;
}
