import type { Outcome } from '../expressions/tree.ts';
import type { RecordedFigure, RecordedInPull } from '../sheet/sheet.ts';
import { canonicalUnits } from '../units/kinds.ts';
import { logQuantities } from './all.ts';
import type { Analysis } from './analysis.ts';
import type { Measured } from './measured.ts';
import type { LogQuantity } from './quantity.ts';

/** By quantity id: a figure, or a list with one a pull. */
export type LogResults = Readonly<Record<string, RecordedFigure | readonly RecordedInPull[]>>;

/** Whether there is one figure a pull. */
export const isPerPull = (entry: LogResults[string]): entry is readonly RecordedInPull[] => Array.isArray(entry);

/** Everything that a log came to. */
export function resultsOf({ run, pulls, episodes }: Pick<Analysis, 'run' | 'pulls' | 'episodes'>): LogResults {
	const numbers = episodes.flatMap(({ number }) => number ?? []);
	return Object.fromEntries(
		logQuantities.map(quantity => {
			if (quantity.logged === 'run') return [quantity.id, figure(quantity, run.get(quantity.id)!)];
			const list = pulls.get(quantity.id)!;
			return [quantity.id, list.map((one, index) => ({ pull: numbers[index]!, ...figure(quantity, one) }))];
		}),
	);
}

function figure({ kind, unit }: LogQuantity, { value, low, high, missing }: Measured): RecordedFigure {
	const own = unit ?? (kind in canonicalUnits ? canonicalUnits[kind as keyof typeof canonicalUnits] || '1' : null);
	return { value: value ?? null, unit: own, low, high, missing };
}

/**
 * What the graph takes of a log: a value for every quantity of logs, in place of the nothing that they are without one.
 * What the log does not show is not known.
 */
export function valuesOf(results: LogResults): Map<string, Outcome> {
	const pulls = Math.max(0, ...Object.values(results).map(entry => (isPerPull(entry) ? entry.length : 0)));
	return new Map(
		logQuantities.map(({ id, logged }): [string, Outcome] => {
			const entry = Object.hasOwn(results, id) ? results[id] : undefined;
			// An older record does not have every figure: of each pull it is then not known.
			if (entry === undefined) return [id, logged === 'pull' ? new Array(pulls).fill(undefined) : undefined];
			return [id, isPerPull(entry) ? entry.map(outcome) : outcome(entry)];
		}),
	);
}

const outcome = ({ value, missing }: RecordedFigure): Outcome =>
	value === null ? (missing.length > 0 ? undefined : null) : (value as Outcome);
