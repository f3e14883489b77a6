import type { Expression } from '../expressions/tree.ts';

/** When a reading is taken, in the order they are met. */
export const readingStates = ['key-on', 'cranking', 'idle', '3000-rpm', 'full-load'] as const;

/** How far off a reading may be before it means something, in the canonical unit of its kind. */
export type Band =
	| { readonly is: 'from-to'; readonly low: number; readonly high: number | null }
	| { readonly is: 'at-least' }
	| { readonly is: 'share' | 'within'; readonly by: number };

/** What a gauge should show on a car that is right: a figure of this car, or where `of` is null what every such car reads. */
export interface ExpectedReading {
	readonly state: (typeof readingStates)[number];
	readonly reading: string;
	readonly title: string;
	readonly when: Expression | null;
	readonly unless: Expression | null;
	readonly of: string | null;
	readonly value: number;
	readonly unit: string;
	readonly band: Band;
	/** What it can never read more than. */
	readonly most: string | null;
	/** The answer that holds a measured reading of it. */
	readonly answer: string | null;
}
