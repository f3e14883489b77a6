import type { Value } from '../expressions/tree.ts';

/** A value that is only known to lie at or beyond this figure. */
export class Bounded {
	readonly value: Value;
	readonly bound: 'above' | 'below';
	constructor(value: Value, bound: 'above' | 'below') {
		this.value = value;
		this.bound = bound;
	}
}
