import { slotNamed } from '../graph/graph.ts';
import { type State, valueIn } from '../graph/solve.ts';
import type { Band, ExpectedReading as Expected } from '../rulebook/expected-reading.ts';
import type { Rulebook } from '../rulebook/rulebook.ts';
import type { ExpectedReading } from './audit.ts';
import { conditionIn } from './conditions.ts';

/** What you should read, with what was measured. What does not apply to this build is left out. */
export function readings({ readings }: Rulebook, state: State): ExpectedReading[] {
	return readings.flatMap(row => (isShown(row, state) ? [reading(row, state)] : []));
}

/** `when` must be known to hold, `unless` known to hold leaves it out; a figure that does not apply here is no reading. */
function isShown({ when, unless, of, most }: Expected, state: State): boolean {
	if (when && conditionIn(state, when) !== true) return false;
	if (unless && conditionIn(state, unless) === true) return false;
	return [of, most].every(id => id === null || valueIn(state, id) !== null);
}

function reading({ state: when, reading, title, of, value: usual, unit, band, most, answer }: Expected, state: State) {
	const rests = [of, most].filter(id => id !== null);
	const known = (id: string): number | null => {
		const value = valueIn(state, id);
		return typeof value === 'number' ? value : null;
	};
	const value = rests.some(id => known(id) === null) ? null : of === null ? usual : known(of);
	const [low, high] = value === null ? [null, null] : ends(band, value);
	const top = most === null ? null : known(most);
	const given = answer === null ? undefined : state.given.get(slotNamed(state.graph, answer))?.value;
	const ids = (lists: State['missing']) => [...new Set(rests.flatMap(id => lists[slotNamed(state.graph, id)]!))].sort();
	return {
		state: when,
		reading,
		title,
		value,
		unit,
		low,
		high: high !== null && top !== null ? Math.min(high, top) : high,
		answer,
		measured: typeof given === 'number' ? given : null,
		missing: value === null ? ids(state.missing) : [],
		assumed: value === null ? [] : ids(state.assumed),
	};
}

/** The band from the value; an open end is null. */
function ends(band: Band, value: number): readonly [number, number | null] {
	switch (band.is) {
		case 'from-to':
			return [band.low, band.high];
		case 'at-least':
			return [value, null];
		case 'share':
			return [value * (1 - band.by), value * (1 + band.by)];
		case 'within':
			return [value - band.by, value + band.by];
	}
}
