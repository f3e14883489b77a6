/** That a column, by its header, is a channel, in a unit: `--channel NAME=HEADER[@UNIT]`. Unit null: as its header says. */
export interface ColumnMapping {
	readonly channel: string;
	readonly header: string;
	readonly unit: string | null;
}

/** How a column of an earlier log was read, and by what. */
export interface EarlierMapping extends ColumnMapping {
	readonly by: string;
}

/** What the person says of the columns of a log. */
export interface ColumnChoices {
	readonly mappings: readonly ColumnMapping[];
	/** Headers of columns that are not read. */
	readonly ignored: readonly string[];
}

/** The same, with how the columns of earlier logs were read, the newest last. */
export interface RecognitionChoices extends ColumnChoices {
	readonly earlier?: readonly (readonly EarlierMapping[])[];
}

export const noChoices: ColumnChoices = { mappings: [], ignored: [] };

/** What a person said of the columns of the newest earlier log whose headers are all among these. */
export const mappingsOfEarlierLog = (
	{ earlier = [] }: RecognitionChoices,
	headers: readonly string[],
): readonly ColumnMapping[] =>
	(earlier.findLast(columns => columns.every(({ header }) => header === '#' || headers.includes(header))) ?? []).filter(
		({ by }) => by !== 'header',
	);

/** Parses `NAME=HEADER[@UNIT]`; undefined where it is not of that form. */
export function parseMapping(text: string): ColumnMapping | undefined {
	const [, channel, rest] = /^\s*([a-z][a-z0-9_]*)\s*=\s*(.+?)\s*$/.exec(text) ?? [];
	if (channel === undefined || rest === undefined) return undefined;
	const at = rest.lastIndexOf('@');
	if (at <= 0) return { channel, header: rest, unit: null };
	return { channel, header: rest.slice(0, at).trim(), unit: rest.slice(at + 1).trim() };
}
