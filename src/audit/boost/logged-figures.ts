import type { LogResults } from '../../log/results.ts';
import type { RecordedFigure, RecordedInPull } from '../../sheet/sheet.ts';

/** A number of a whole log; NaN where it has none. */
export const figureOf = (results: LogResults, id: string): number => {
	const value = (results[id] as RecordedFigure | undefined)?.value;
	return typeof value === 'number' ? value : Number.NaN;
};

/** The figures of a quantity that has one a pull; none where the log lacks it. */
export const figuresByPull = (results: LogResults, id: string): readonly RecordedInPull[] => {
	const entry = results[id];
	return Array.isArray(entry) ? entry : [];
};

/** What a log has of one pull, by the pull's number; undefined or null where it has nothing. */
export const valueInPull = (results: LogResults, id: string, pull: number): RecordedInPull['value'] | undefined =>
	figuresByPull(results, id).find(one => one.pull === pull)?.value;

/** The same as a number; NaN where it is none. */
export const figureInPull = (results: LogResults, id: string, pull: number): number => {
	const value = valueInPull(results, id, pull);
	return typeof value === 'number' ? value : Number.NaN;
};
