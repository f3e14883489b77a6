import { basename } from 'node:path';
import { impossibleOf, type LogReport, reportLog } from '../../audit/log-report.ts';
import { stateOf } from '../../audit/logged.ts';
import type { Model } from '../../audit/model.ts';
import { openStream } from '../../files/stream.ts';
import { Analyzer } from '../../log/analyze.ts';
import { carOf } from '../../log/car-of.ts';
import type { ColumnChoices } from '../../log/options.ts';
import { Overview } from '../../log/overview.ts';
import { openRecording } from '../../log/record.ts';
import type { Checked } from '../../sheet/check.ts';
import type { UnitSet } from '../../sheet/question.ts';
import { BadTable } from '../../table/problem.ts';
import { version } from '../assets/version.ts';

/** How far a log is read: bytes of it, and all of them; null for a pipe. */
export type Progress = (taken: number, size: number | null) => void;

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
	choices: Omit<ColumnChoices, 'kept'>,
	said: { readonly date: string; readonly units: UnitSet; readonly draws: number },
	progress: Progress = () => {},
): Promise<LogReport> {
	const stream = await openStream(path);
	const kept = (opened.sheet.logs ?? []).map(({ channels }) => channels);
	const recording = await openRecording(stream.bytes, model.rulebook.channels, { ...choices, kept });
	const read = new Set<string>();
	const analyzer = new Analyzer(
		carOf(stateOf(model, opened.sheet), read),
		model.rulebook.episodes!,
		model.rulebook.channels,
	);
	const overview = new Overview();
	for await (const block of recording.blocks) {
		overview.take(block);
		analyzer.push(block);
		progress(stream.taken(), stream.size);
	}
	if (recording.totals.rows === 0) throw new BadTable('no row with a number', 'a table with numbers in its rows');
	return reportLog(
		model,
		opened,
		recording,
		analyzer.finish(impossibleOf(recording)),
		overview.all,
		{ name: logName(path), sha256: stream.sha256(), bytes: stream.taken() },
		{ ...said, tool: version },
		read,
	);
}

/** What a log is called where it is spoken of. */
export const logName = (path: string): string => (path === '-' ? 'standard input' : basename(path));
