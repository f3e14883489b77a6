import type { Outcome } from '../expressions/tree.ts';
import { slotNamed } from '../graph/graph.ts';
import type { State } from '../graph/solve.ts';
import { nineOfTen, type Uncertain } from '../graph/uncertain.ts';
import { logQuantities } from './all.ts';
import { deviationOf } from './measured.ts';
import type { LogResults } from './results.ts';

/**
 * How the figures of a log stray: each by its own low and high, all pulls alike, for a sensor is off as much in one as in the
 * next; those of one sensor as one.
 */
export const loggedUncertainty = ({ graph, values }: State, results: LogResults): Uncertain[] =>
	logQuantities.flatMap(({ id, sensor }): Uncertain[] => {
		const entry = Object.hasOwn(results, id) ? results[id]! : [];
		const deviations = (Array.isArray(entry) ? entry : [entry]).map(deviationOf);
		const slot = slotNamed(graph, id);
		const value = values[slot];
		if (value === undefined || value === null || deviations.every(deviation => deviation === 0)) return [];
		return [
			{
				slot,
				dimensions: 1,
				...(sensor === undefined ? {} : { figure: `sensor ${sensor}` }),
				difference: nineOfTen * deviations[0]!,
				apply: (now, z, first) =>
					Array.isArray(now)
						? (now as Outcome[]).map((one, at) => strayed(one, deviations[at]! * z[first]!))
						: (strayed(now, deviations[0]! * z[first]!) as Outcome),
			},
		];
	});

const strayed = (value: Outcome, by: number): Outcome => (typeof value === 'number' ? value + by : value);
