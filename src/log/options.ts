/** What the person says of a column: `--channel NAME=HEADER[@UNIT]`. */
export interface GivenChannel {
	readonly channel: string;
	readonly header: string;
	readonly unit: string | null;
}

/** What the person says of the columns of a log. */
export interface ColumnChoices {
	readonly given: readonly GivenChannel[];
	/** Headers that are to be left alone. */
	readonly not: readonly string[];
	/** The mapping of an earlier log with the same headers. */
	readonly kept?: readonly GivenChannel[];
}

export const noChoices: ColumnChoices = { given: [], not: [] };

/** Reads `NAME=HEADER[@UNIT]`; undefined where it is not of that form. */
export function readGiven(text: string): GivenChannel | undefined {
	const [, channel, rest] = /^\s*([a-z][a-z0-9_]*)\s*=\s*(.+?)\s*$/.exec(text) ?? [];
	if (channel === undefined || rest === undefined) return undefined;
	const at = rest.lastIndexOf('@');
	if (at <= 0) return { channel, header: rest, unit: null };
	return { channel, header: rest.slice(0, at).trim(), unit: rest.slice(at + 1).trim() };
}
