/** Ids of rules/channels.yaml: `engine_speed`, `lambda_1`. `time` is none of them: every block has it. */
export type ChannelId = string;

/**
 * Some rows of a log, in the order of the file. A channel's array is as long as `time`, in the canonical unit of its kind (SI;
 * rpm, deg), NaN where the row has no reading of it. The arrays belong to whoever takes the block; the next block has new ones.
 */
export interface Block {
	/** Seconds since the first row. Past midnight it goes on; where the logger's clock goes back, it goes back. */
	readonly time: Float64Array;
	readonly channels: ReadonlyMap<ChannelId, Float64Array>;
}

/** By what a column was taken for a channel: its own header, `--channel`, the interview, the mapping kept in the sheet. */
export type RecognizedBy = 'header' | 'given' | 'asked' | 'kept';

/** A column that was taken for a channel. */
export interface Recognized {
	readonly channel: ChannelId;
	/** As in the file, unit included. */
	readonly header: string;
	/** As read. */
	readonly unit: string;
	readonly by: RecognizedBy;
}

/** A log being read: what its columns are is known before the first row is handed over. */
export interface Recording {
	readonly channels: readonly Recognized[];
	/** Every column with its first cells, in the order of the table. */
	readonly columns: readonly { readonly header: string; readonly first: readonly string[] }[];
	/** Headers of columns that are no channel. */
	readonly unused: readonly string[];
	/** What was decided on the way and must be reported: an assumed unit, two candidates, a sign reversed. */
	readonly notes: readonly string[];
	/** To be gone through once, to its end. */
	readonly blocks: AsyncIterable<Block>;
	/** Right only once the end was reached. */
	readonly totals: Totals;
}

/** Counted while the blocks are gone through. */
export interface Totals {
	/** Lines with values. */
	rows: number;
	/** Lines that could not be read, or not whole. */
	unread: number;
	/** The first three of them, each with line and column. */
	readonly faults: string[];
	/** Readings of a channel outside of what it can ever be; each is NaN in its block. */
	readonly impossible: Map<ChannelId, number>;
}
