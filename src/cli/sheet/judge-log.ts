import { basename } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { impossibleOf, type LogOptions, type LogReport, reportLog } from '../../audit/log-report.ts';
import { stateOf } from '../../audit/logged.ts';
import type { Model } from '../../audit/model.ts';
import { openStream } from '../../files/stream.ts';
import { Analyzer } from '../../log/analyze.ts';
import { carOf } from '../../log/car-of.ts';
import type { ColumnChoices, RecognitionChoices } from '../../log/column-mapping.ts';
import { columnsOf, type LogColumns } from '../../log/columns.ts';
import { Overview } from '../../log/overview.ts';
import { openRecording } from '../../log/record.ts';
import type { Checked } from '../../sheet/check.ts';
import type { Sheet } from '../../sheet/sheet.ts';
import { BadTable } from '../../table/problem.ts';
import { version } from '../assets/version.ts';
import type { OpenLog } from '../log-reader/open.ts';
import { openHere } from '../log-reader/reading.ts';

/** How far a log is read: bytes of it, and all of them; null for a pipe. Then it is judged. */
export interface Progress {
	readonly at: (taken: number, size: number | null) => void;
	readonly judging?: () => void;
	/** How far the fit is, 0 to 1; false where it is to be left. */
	readonly fitting?: (share: number) => boolean;
}

/**
 * Reads a log and judges it in the car of a sheet. Nothing is written.
 *
 * @param path `-` is standard input
 * @throws FileProblem, BadTable
 */
export async function judgeLog(
	model: Model,
	opened: Checked,
	path: string,
	choices: ColumnChoices,
	said: Omit<LogOptions, 'tool'>,
	progress: Progress = { at: () => {} },
	open: OpenLog = openHere,
): Promise<LogReport> {
	const { channels, episodes } = model.rulebook;
	const opening = open({ path, channels, choices: withEarlier(choices, opened.sheet) });
	const read = new Set<string>();
	const solved = stateOf(model, opened.sheet);
	const { recording, size, taken, sha256 } = await opening;
	const analyzer = new Analyzer(carOf(solved, read), episodes!, channels);
	const overview = new Overview();
	for await (const block of recording.blocks) {
		overview.take(block);
		analyzer.push(block);
		progress.at(taken(), size);
	}
	progress.judging?.();
	await setImmediate();
	if (recording.totals.rows === 0) throw new BadTable('no row with a number', 'a table with numbers in its rows');
	const analysis = analyzer.finish(impossibleOf(recording));
	if (Number.isNaN(analysis.seconds))
		throw new BadTable('no row with a time', 'a time in the rows, or rows so many a second (--channel time=#@20Hz)');
	await setImmediate();
	const file = { name: logName(path), sha256: sha256(), bytes: taken() };
	const log = { file, recording, analysis, overview: overview.all, read, solved };
	const report = reportLog(model, opened, log, { ...said, tool: version });
	// Keys and signals are taken in between.
	for (let goesOn = true; ; ) {
		const { done, value } = report.next(goesOn ? undefined : 'stop');
		if (done) return value;
		await setImmediate();
		goesOn = progress.fitting?.(value) ?? true;
	}
}

/** The beginning of a log: what each column is taken for. */
export async function lookAtLog(model: Model, sheet: Sheet, path: string, choices: ColumnChoices): Promise<LogColumns> {
	const stream = await openStream(path);
	try {
		return columnsOf(await openRecording(stream.bytes, model.rulebook.channels, withEarlier(choices, sheet)));
	} finally {
		stream.close();
	}
}

const withEarlier = (choices: ColumnChoices, { logs = [] }: Sheet): RecognitionChoices => ({
	...choices,
	earlier: logs.map(({ channels }) => channels),
});

/** What a log is called where it is spoken of. */
export const logName = (path: string): string => (path === '-' ? 'standard input' : basename(path));
