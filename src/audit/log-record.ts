import { recordedPoints, short } from '../log/recorded-points.ts';
import { isPerPull } from '../log/results.ts';
import { mostLogs } from '../sheet/check-logs.ts';
import { restingOn } from '../sheet/rests-on.ts';
import type { Answer, LogRecord, RecordedFigure, Sheet } from '../sheet/sheet.ts';
import type { LogReport } from './log-report.ts';

/**
 * What a judged log leaves in the sheet.
 *
 * @param sheet with the answers that were taken
 * @param answers those, as they were written
 */
export function recordOfLog(
	{ json, analysis, rests_on }: LogReport,
	sheet: Sheet,
	answers: Readonly<Record<string, Answer>>,
): LogRecord {
	const { name, sha256 } = json.file;
	return {
		name,
		sha256,
		date: json.date,
		channels: json.channels.map(({ channel, header, unit, by, lag }) => ({
			channel,
			header,
			unit,
			by,
			lag: lag === null ? null : short(lag),
		})),
		quantities: Object.fromEntries(
			Object.entries(json.quantities).map(([id, entry]) => [
				id,
				isPerPull(entry) ? entry.map(one => ({ pull: one.pull, ...figure(one) })) : figure(entry),
			]),
		),
		points: recordedPoints(analysis.points),
		answers,
		fit: json.fit && { ...json.fit },
		rests_on: restingOn(sheet, rests_on),
	};
}

const figure = ({ value, unit, low, high, missing }: RecordedFigure): RecordedFigure => ({
	value: shortened(value),
	unit,
	low: low === null ? null : short(low),
	high: high === null ? null : short(high),
	missing,
});

/** Numbers, in lists too, to as many digits as they are worth. */
const shortened = (value: unknown): unknown =>
	typeof value === 'number' ? short(value) : Array.isArray(value) ? value.map(shortened) : value;

/** A sheet with one more log; the same file judged anew takes the place of its earlier record. The newest stands last. */
export function withLog(sheet: Sheet, record: LogRecord): Sheet {
	const others = (sheet.logs ?? []).filter(({ sha256 }) => sha256 !== record.sha256);
	return { ...sheet, logs: [...others, record].slice(-mostLogs) };
}
