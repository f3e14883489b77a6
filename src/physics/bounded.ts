/**
 * A number that may lie beyond what could be looked at.
 *
 * `bound` null: `value` is the number itself. 'above': it is `value` or more. 'below': it is `value` or less.
 */
export interface Bounded {
	readonly value: number;
	readonly bound: 'above' | 'below' | null;
}
