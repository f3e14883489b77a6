import type { LogReport } from '../audit/log-report.ts';
import type { Channel } from '../log/channel.ts';
import type { ColumnChoices } from '../log/column-mapping.ts';
import type { LogColumns } from '../log/columns.ts';

/** A log being read into the sheet that is open. */
export interface LogSession {
	/** The screen to go back to. */
	readonly back: 'audit' | 'build' | 'question';
	readonly path: string;
	/** Paths that begin as typed. */
	readonly offers: readonly string[];
	readonly choices: ColumnChoices;
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
