import { type Bound, bind, type Reader } from '../expressions/bind.ts';
import { type Expression, operands } from '../expressions/tree.ts';

/** Comparisons bound to the values. */
export type Comparisons = readonly (readonly [left: Bound, right: Bound])[];

const comparisons: readonly string[] = ['<', '<=', '>', '>=', '==', '!='];

/** Both sides of each comparison in an expression, in the order they stand in. */
export function comparisonsIn(tree: Expression, reader: Reader): Comparisons {
	const parts = operands(tree);
	const inside = parts.flatMap(part => comparisonsIn(part, reader));
	return comparisons.includes(tree[0]) ? [[bind(parts[0]!, reader), bind(parts[1]!, reader)], ...inside] : inside;
}

/** |value - threshold| / |threshold| of the first comparison that has one. */
export function distanceIn(comparisons: Comparisons): number | null {
	for (const [left, right] of comparisons) {
		const [value, threshold] = [left(), right()];
		if (typeof value === 'number' && typeof threshold === 'number' && threshold !== 0)
			return Math.abs((value - threshold) / threshold);
	}
	return null;
}
