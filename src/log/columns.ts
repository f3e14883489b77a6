import type { Recognized, Recording } from './block.ts';

/** One column of a log: what it is taken for, if anything, and its first cells. */
export interface LogColumn {
	readonly header: string;
	readonly taken: Recognized | null;
	readonly first: readonly string[];
}

/** How the columns of a log are read, to be looked over before it is judged. */
export interface LogColumns {
	readonly columns: readonly LogColumn[];
	readonly notes: readonly string[];
}

/** The columns of a recording as a person looks them over. */
export const columnsOf = ({
	columns,
	channels,
	notes,
}: Pick<Recording, 'columns' | 'channels' | 'notes'>): LogColumns => ({
	columns: columns.map(({ header, first }) => ({
		header,
		first,
		taken: channels.find(one => one.header === header) ?? null,
	})),
	notes,
});
