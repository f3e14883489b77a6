import type { Answer } from '../../sheet/sheet.ts';

/** One of two readings of a line: the line as it would be typed so, and what it comes to or why it cannot be that. */
export interface Way {
	readonly text: string;
	readonly echo: string;
}

/** What came of a typed line: an answer with its echo, or why not. */
export type Entry =
	| { readonly is: 'answer'; readonly answer: Answer; readonly echo: string }
	/** It can be so, but looks odd: typed once more it is taken. */
	| { readonly is: 'odd'; readonly answer: Answer; readonly echo: string; readonly problem: string }
	/** Only the person knows which of two it is. */
	| { readonly is: 'two-ways'; readonly ways: readonly [Way, Way] }
	/** It cannot be that, but this, which the person may mean. */
	| { readonly is: 'offer'; readonly way: Way }
	| { readonly is: 'problem'; readonly problem: string };
