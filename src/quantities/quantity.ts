import type { Outcome, Value } from '../expressions/tree.ts';
import type { Kind } from '../units/kinds.ts';
import type { Inputs } from './inputs.ts';

/** What a quantity is: a kind of number, or something that is none. */
export type QuantityKind = Kind | 'yes-no' | 'list' | 'words' | 'hidden';

/** A usual value that belongs to quantities, not to a question: nobody is asked for it, or it stands in for one reader alone. */
export interface Assumption extends Told {
	readonly value: number;
	/** How far off it may be, as a difference in the kept unit. */
	readonly spread: number;
	/** The answer that is named in `assumed` when this is used; none: the assumption itself is. */
	readonly standsFor?: string;
}

/** A quantity as it would be with some answers set to other values: what a coil did at another boost and gap. */
export interface Elsewhere extends Told {
	readonly elsewhere: { readonly of: string; readonly with: Readonly<Record<string, string>> };
}

/** A limit: the value of `vary` at which `until` reaches `reaches`. */
export interface Limit {
	readonly vary: string;
	readonly until: string;
	readonly reaches: string | number;
	/** True when `until` grows towards the limit, false when it falls towards it. */
	readonly rising: boolean;
	readonly from: number;
	readonly to: number;
	/** A quantity beyond which there is nothing to look for, where it is less than `to`. */
	readonly end?: string | undefined;
}

interface Told {
	readonly id: string;
	readonly kind: QuantityKind;
	/** The unit as told outside, where it is not the kept unit of the kind. */
	readonly unit?: string;
	/** The units it is written in for a person, where they are not the usual ones of its kind. */
	readonly shown?: { readonly us: string; readonly metric: string };
	/** The relation in words and signs, as printed in the numbers part of an audit. */
	readonly formula: string;
	/** Ids of rules/sources.yaml. */
	readonly source: readonly string[];
	/** Arithmetic or a published relation, or a rule of thumb, a correlation, a usual value. */
	readonly nature: 'exact' | 'estimate';
	/** The band the relation itself leaves open, as factors on the value. */
	readonly band?: readonly [number, number];
}

/** The least and the most that a quantity can come to, in the unit it is told in; null where there is no end. */
export type Range = readonly [least: number | null, most: number | null];

/** A named number of the model, with the inputs it may read and a pure function of them. */
export interface Quantity<Input extends string = string> extends Told {
	readonly inputs: readonly Input[];
	/** What it can come to, where that is not just 0 or more. */
	readonly range?: Range;
	/** Runs the cylinder model: never recomputed inside a draw, its slope is used. */
	readonly heavy?: boolean;
	/** An estimate by itself, so that it is named in `assumed` wherever it is used. */
	readonly assumes?: boolean;
	compute(inputs: Inputs<Input>): Outcome | Bounded;
}

/** A quantity that is found by moving another one. */
export interface LimitQuantity extends Told {
	readonly limit: Limit;
	/** Says where the limit applies: `null` from it means not here. Reads only `inputs`. */
	readonly inputs: readonly string[];
	readonly heavy?: boolean;
	/** Limits that are the ends of this one's band, where the relation's own band decides more than the answers do. */
	readonly ends?: readonly [low: string, high: string];
	when?(inputs: Inputs<string>): boolean | undefined | null;
}

/** A value that is only known to lie at or beyond this figure. */
export class Bounded {
	readonly value: Value;
	readonly bound: 'above' | 'below';
	constructor(value: Value, bound: 'above' | 'below') {
		this.value = value;
		this.bound = bound;
	}
}

/** Declares a quantity; the compiler then refuses a read of anything that `inputs` does not name. */
export function quantity<const Input extends string>(declared: Quantity<Input>): Quantity<Input> {
	return declared;
}

/** Declares a limit. */
export function limit(declared: LimitQuantity): LimitQuantity {
	return declared;
}

/** Declares an assumption. */
export function assumption(declared: Assumption): Assumption {
	return declared;
}

/** Declares a quantity at other values. */
export function elsewhere(declared: Elsewhere): Elsewhere {
	return declared;
}

export type AnyQuantity = Quantity<never> | LimitQuantity | Assumption | Elsewhere;
