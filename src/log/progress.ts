/** How far a log is, for a person who waits. Each may throw, which stops it all. */
export interface LogProgress {
	/** The share of the file that is read; null for a pipe. */
	read(share: number | null): void;
	/** The share of the fit that is done; false: the report is to go on without it. */
	fitted(share: number): boolean;
}
