import { slotNamed } from '../graph/graph.ts';
import type { State } from '../graph/solve.ts';
import type { ExpectedReading } from './audit.ts';
import { type Expected, expected } from './expected.ts';

/** What you should read, with what was measured beside it. What does not apply to this build is left out. */
export function readings(state: State): ExpectedReading[] {
	return (Object.keys(expected) as (keyof typeof expected)[]).flatMap(when =>
		expected[when].flatMap(row => reading(row, when, state) ?? []),
	);
}

function reading(row: Expected, when: ExpectedReading['state'], state: State): ExpectedReading | null {
	const value = (id: string) => state.values[slotNamed(state.graph, id)];
	if (row.from.some(id => value(id) === null)) return null;
	const read = (id: string): number | undefined => {
		const known = value(id);
		return typeof known === 'number' ? known : undefined;
	};
	const told = row.of(read) ?? null;
	const [low, high] = told === null ? [null, null] : row.band(told, read);
	const given = row.answer === null ? undefined : state.given.get(slotNamed(state.graph, row.answer))?.value;
	const of = (lists: State['missing']) =>
		[...new Set(row.from.flatMap(id => lists[slotNamed(state.graph, id)]!))].sort();
	return {
		state: when,
		reading: row.reading,
		title: typeof row.title === 'string' ? row.title : row.title(state),
		value: told,
		unit: row.unit,
		low,
		high,
		answer: row.answer,
		measured: typeof given === 'number' ? given : null,
		missing: told === null ? of(state.missing) : [],
		assumed: told === null ? [] : of(state.assumed),
	};
}
