import type { Outcome } from '../expressions/tree.ts';
import { kept } from '../units/kinds.ts';
import { logQuantities } from './all.ts';
import type { Analysis } from './analyze.ts';
import type { Measured } from './measured.ts';
import type { LogQuantity } from './quantity.ts';

/** One figure as told to other programs and kept in the sheet; in the kept unit of its kind. */
export interface ToldFigure {
	/** Null where the log does not tell it (then `missing` says what would) or there is nothing to tell. */
	readonly value: unknown;
	readonly unit: string | null;
	readonly low: number | null;
	readonly high: number | null;
	readonly missing: readonly string[];
}

/** One figure of one pull. */
export interface ToldInPull extends ToldFigure {
	readonly pull: number;
}

/** By quantity id: a figure, or a list with one a pull. */
export type ToldQuantities = Readonly<Record<string, ToldFigure | readonly ToldInPull[]>>;

/** Everything that a log came to. */
export function toldBy({ run, pulls, episodes }: Pick<Analysis, 'run' | 'pulls' | 'episodes'>): ToldQuantities {
	const numbers = episodes.flatMap(({ number }) => number ?? []);
	return Object.fromEntries(
		logQuantities.map(quantity => {
			if (quantity.logged === 'run') return [quantity.id, figure(quantity, run.get(quantity.id)!)];
			const list = pulls.get(quantity.id)!;
			return [quantity.id, list.map((one, index) => ({ pull: numbers[index]!, ...figure(quantity, one) }))];
		}),
	);
}

function figure({ kind, unit }: LogQuantity, { value, low, high, missing }: Measured): ToldFigure {
	const own = unit ?? (kind in kept ? kept[kind as keyof typeof kept] || '1' : null);
	return { value: value ?? null, unit: own, low, high, missing };
}

/**
 * What the graph takes of a log: a value for every quantity of logs, in place of the nothing that they are without one.
 * What the log does not tell is not known.
 */
export function valuesOf(told: ToldQuantities): Map<string, Outcome> {
	return new Map(
		logQuantities.map(({ id, logged }): [string, Outcome] => {
			const entry = Object.hasOwn(told, id) ? told[id] : undefined;
			if (entry === undefined) return [id, logged === 'pull' ? [] : undefined];
			return [id, isList(entry) ? entry.map(outcome) : outcome(entry)];
		}),
	);
}

const isList = (entry: ToldFigure | readonly ToldInPull[]): entry is readonly ToldInPull[] => Array.isArray(entry);

const outcome = ({ value, missing }: ToldFigure): Outcome =>
	value === null ? (missing.length > 0 ? undefined : null) : (value as Outcome);
