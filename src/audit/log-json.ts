import type { Analysis } from '../log/analysis.ts';
import type { Recording } from '../log/block.ts';
import type { LogResults } from '../log/results.ts';
import type { Finding, FitJson, LimitRung } from './audit.ts';
import type { BoostStep } from './boost/next-step.ts';
import type { LoggedAnswer } from './log-answers.ts';

/** The file of a log, as a sheet keeps it. */
export interface LogFile {
	readonly name: string;
	readonly sha256: string;
	readonly bytes: number;
}

/** What `log --json` prints; every key is always there. */
export interface LogJson {
	readonly format: 'swap-audit/log';
	readonly version: 1;
	readonly sheet: string;
	readonly date: string;
	readonly tool: string;
	readonly rules: string;
	readonly file: LogFile & {
		readonly rows: number;
		readonly unread: number;
		readonly seconds: number;
		readonly rate: number | null;
	};
	readonly channels: readonly {
		readonly channel: string;
		readonly header: string;
		readonly unit: string;
		readonly by: string;
		readonly samples: number | null;
		readonly low: number | null;
		readonly high: number | null;
		readonly lag: number | null;
	}[];
	readonly unused: readonly string[];
	readonly episodes: Analysis['episodes'];
	readonly quantities: LogResults;
	readonly findings: readonly Finding[];
	readonly answers: readonly LoggedAnswer[];
	readonly fit: FitJson | null;
	readonly limits: { readonly before: readonly LimitRung[]; readonly after: readonly LimitRung[] };
	readonly boost_steps: readonly BoostStep[];
	/** Why there is no step; empty where there is one, and without boost. */
	readonly boost_steps_refused: readonly string[];
	/** What was decided while reading. */
	readonly notes: readonly string[];
}

/** What each column was taken for, with its new readings and the ends of what they show. */
export function channelsOf(
	{ channels, totals }: Pick<Recording, 'channels' | 'totals'>,
	{ samples, seconds, lag }: Pick<Analysis, 'samples' | 'seconds' | 'lag'>,
): LogJson['channels'] {
	return channels.map(one => {
		if (one.channel === 'time') return { ...one, samples: totals.rows, low: 0, high: seconds, lag: null };
		const seen = samples.get(one.channel);
		const some = seen !== undefined && seen.count > 0;
		return {
			...one,
			samples: seen?.count ?? 0,
			low: some ? seen.low : null,
			high: some ? seen.high : null,
			lag: /^lambda_[12]$/.test(one.channel) ? lag : null,
		};
	});
}
