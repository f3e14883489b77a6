import { quantities as ofModel } from '../quantities/all.ts';
import type { AnyQuantity } from '../quantities/quantity.ts';
import { logQuantities } from './all.ts';

/** A quantity of a log as the graph has it: empty without a log, whose values replace it. */
const ofLogs = logQuantities.map(
	({ id, kind, unit, shown, formula, source, nature, range }): AnyQuantity => ({
		id,
		// A log's quantities are named by what they are of a log: `log.boost_peak` is the logged boost peak.
		label: `logged ${id.slice('log.'.length).replaceAll('_', ' ')}`,
		kind,
		...(unit === undefined ? {} : { unit }),
		...(shown === undefined ? {} : { shown }),
		...(range === undefined ? {} : { range }),
		formula,
		source,
		nature,
		inputs: [],
		compute: () => null,
	}),
);

/** Every quantity there is: those of the model and those that a log gives. */
export const quantities: readonly AnyQuantity[] = [...ofModel, ...ofLogs];

/** Quantities with one figure a pull. */
export const perPull: ReadonlySet<string> = new Set(
	logQuantities.filter(({ logged }) => logged === 'pull').map(({ id }) => id),
);

/** The numbers of the pulls, as text: what a rule with `each: pull` speaks of one by one. */
export const pullNumbers = 'log.pull_numbers';
