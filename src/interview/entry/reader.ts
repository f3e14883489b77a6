import type { Question, UnitSet } from '../../sheet/question.ts';
import type { Answer } from '../../sheet/sheet.ts';
import type { Kind } from '../../units/kinds.ts';
import { unitNamed } from '../../units/names.ts';
import type { Asked } from '../../units/read.ts';

/** What a line came to before it is checked: an answer, with words of its own when the usual ones will not do; or why not. */
export type Read =
	| { readonly answer: Answer; readonly echo?: string }
	/** `twoWays`: it can be read, but in two ways. */
	| { readonly problem: string; readonly twoWays?: boolean };

/** Reads a line for one kind of question. */
export type Reader = (question: Question, text: string, units: UnitSet) => Read;

/** What the number at `index` of a question is asked as. */
export function askedAs(question: Question, units: UnitSet, index = 0): Asked {
	const kind = question.of[index]!;
	const kinds: Kind[] = [kind, ...(question.takes && index === question.of.length - 1 ? [question.takes.kind] : [])];
	const shown = unitNamed(question.unit[units][index]!, [kind])!;
	return { kinds, shown, signed: (question.hard?.[0] ?? 0) < 0 };
}

/** The refusal of the units room as an entry's. */
export function refused(refusal: { readonly problem: string; readonly ambiguous?: unknown }): Read {
	return { problem: refusal.problem, twoWays: refusal.ambiguous !== undefined };
}

/** Rows of a list: each on a line of its own, or with commas or semicolons between. */
export const rowsOf = (text: string): string[] =>
	text
		.split(/[,;\n]+/)
		.map(row => row.trim())
		.filter(row => row !== '');
