import type { Outcome } from '../expressions/tree.ts';
import type { Bounded } from '../graph/bounded.ts';
import type { LimitDefinition } from '../graph/limit.ts';
import type { Reads } from '../graph/reader.ts';
import type { Text } from '../sheet/text.ts';
import type { Kind } from '../units/kinds.ts';

/** What a quantity is: a kind of number, or something that is none. */
export type QuantityKind = Kind | 'yes-no' | 'list' | 'words' | 'hidden';

interface Description {
	readonly id: string;
	/** A short name for lists and panels: `injector duty`. */
	readonly label: string;
	readonly kind: QuantityKind;
	/** The unit it is given in to other programs, where it is not the canonical unit of the kind. */
	readonly unit?: string;
	/** The units it is written in for a person, where they are not the usual ones of its kind. */
	readonly shown?: { readonly us: string; readonly metric: string };
	/** The relation in words and signs, as printed in the numbers part of an audit. */
	readonly formula: Text;
	/** Ids of rules/sources.yaml. */
	readonly source: readonly string[];
	/** Arithmetic or a published relation, or a rule of thumb, a correlation, a usual value. */
	readonly nature: 'exact' | 'estimate';
	/** The band the relation itself leaves open, as factors on the value. */
	readonly band?: readonly [number, number];
	/** The question that shows where in the band this car lies, once it runs. A line of its own waits for it; others do not. */
	readonly shownBy?: string;
}

/** A ratio that people read in percent. */
export const percent = { us: '%', metric: '%' } as const;

/** The least and the most that a quantity can come to, in the unit it is given in; null where there is no end. */
export type Range = readonly [least: number | null, most: number | null];

/** A named number of the model, with the inputs it may read and a pure function of them. */
export interface Quantity<Input extends string = string> extends Description {
	readonly inputs: readonly Input[];
	/** What it can come to, where that is not just 0 or more. */
	readonly range?: Range;
	/** Runs the cylinder model: never computed inside a draw, its sensitivities are used. */
	readonly expensive?: boolean;
	/** An estimate by itself, so that it is named in `assumed` wherever it is used. */
	readonly assumes?: boolean;
	/** What it makes of an input that is not known or does not apply does not count: then neither is it. */
	compute(this: void, inputs: Reads<Input>): Outcome | Bounded;
}

/** A usual value that belongs to quantities, not to a question: nobody is asked for it, or it stands in for one reader alone. */
export interface Assumption extends Description {
	readonly value: number;
	/** How far off it may be, as a difference in the canonical unit. */
	readonly spread: number;
	/** The answer that is named in `assumed` when this is used; none: the assumption itself is. */
	readonly standsFor?: string;
}

/** A quantity as it would be with some answers set to other values: what a coil did at another boost and gap. */
export interface WhatIfQuantity extends Description {
	readonly whatIf: { readonly of: string; readonly with: Readonly<Record<string, string>> };
}

/** A quantity that is found by moving another one. */
export interface LimitQuantity extends Description {
	readonly limit: LimitDefinition;
	/** Says where the limit applies: `null` from it means not here. Reads only `inputs`. */
	readonly inputs: readonly string[];
	readonly expensive?: boolean;
	/** Limits that are the ends of this one's band, where the relation's own band decides more than the answers do. */
	readonly ends?: readonly [low: string, high: string];
	when?(inputs: Reads): boolean | undefined | null;
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
export function whatIf(declared: WhatIfQuantity): WhatIfQuantity {
	return declared;
}

export type AnyQuantity = Quantity<never> | LimitQuantity | Assumption | WhatIfQuantity;
