import type { LogReport } from '../audit/log-report.ts';
import type { Channel } from '../log/channel.ts';
import type { LogColumns } from '../log/columns.ts';
import type { GivenChannel } from '../log/options.ts';

/** What was said of the columns: which channel one is, which are left alone. */
export interface LogChoices {
	readonly given: readonly GivenChannel[];
	readonly not: readonly string[];
}

/** A log being read into the sheet that is open. */
export interface LogSession {
	/** The screen to go back to. */
	readonly back: 'audit' | 'build' | 'question';
	readonly path: string;
	/** Paths that begin as typed. */
	readonly offers: readonly string[];
	readonly choices: LogChoices;
	readonly found: LogColumns | null;
	/** The column whose channel is chosen, and the channel once its unit is. */
	readonly column: number;
	readonly channel: Channel | null;
	readonly doing: 'reading' | 'fitting';
	/** How far that is, 0 to 1; null where it is not known. */
	readonly share: number | null;
	readonly report: LogReport | null;
	/** Answers that are not taken. */
	readonly left: readonly string[];
}
