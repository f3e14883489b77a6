/** What the person says of a column: `--channel NAME=HEADER[@UNIT]`. */
export interface GivenChannel {
	readonly channel: string;
	readonly header: string;
	readonly unit: string | null;
}

/** A column as it was read in an earlier log. */
export interface KeptColumn extends GivenChannel {
	readonly by: string;
}

/** What the person says of the columns of a log. */
export interface ColumnChoices {
	readonly given: readonly GivenChannel[];
	/** Headers that are to be left alone. */
	readonly not: readonly string[];
	/** How the columns of earlier logs were read, the newest last: what somebody said of them is offered where the headers are the same. */
	readonly kept?: readonly (readonly KeptColumn[])[];
}

export const noChoices: ColumnChoices = { given: [], not: [] };

/** What was said of the columns of the newest earlier log that has no header which is not among these. */
export const keptOf = ({ kept = [] }: ColumnChoices, headers: readonly string[]): readonly GivenChannel[] =>
	(kept.findLast(columns => columns.every(({ header }) => header === '#' || headers.includes(header))) ?? []).filter(
		({ by }) => by !== 'header',
	);

/** Reads `NAME=HEADER[@UNIT]`; undefined where it is not of that form. */
export function readGiven(text: string): GivenChannel | undefined {
	const [, channel, rest] = /^\s*([a-z][a-z0-9_]*)\s*=\s*(.+?)\s*$/.exec(text) ?? [];
	if (channel === undefined || rest === undefined) return undefined;
	const at = rest.lastIndexOf('@');
	if (at <= 0) return { channel, header: rest, unit: null };
	return { channel, header: rest.slice(0, at).trim(), unit: rest.slice(at + 1).trim() };
}
