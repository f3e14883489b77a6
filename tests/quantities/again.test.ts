import { expect, test } from 'vitest';
import type { Expression } from '../../src/expressions/tree.ts';
import { OutOfRange } from '../../src/physics/range.ts';
import { solveAgain } from '../../src/quantities/again.ts';
import { makeGraph } from '../../src/quantities/graph.ts';
import { type GivenAnswer, type State, solve } from '../../src/quantities/pass.ts';
import { type AnyQuantity, Bounded, elsewhere, limit, quantity } from '../../src/quantities/quantity.ts';
import type { Question } from '../../src/sheet/question.ts';
import { testModel } from '../support/model.ts';

const asked = (id: string, askWhen: Expression | null = null): Question => ({
	...testModel().rulebook.questions[0]!,
	id,
	askWhen,
	usual: [],
	takes: null,
});
const told = { kind: 'count', formula: '', source: [], nature: 'exact' } as const;
const upwards = { rising: true, from: 0, to: 100 } as const;

const graph = makeGraph(
	[asked('a.x'), asked('a.y'), asked('a.slope'), asked('a.late', ['>', ['name', 'a.x'], ['value', 2]])],
	[
		quantity({
			...told,
			id: 'q.flat_first',
			inputs: ['a.x', 'a.slope'],
			compute: read => Math.max(1, read.number('a.x') * read.number('a.slope')),
		}),
		limit({
			...told,
			id: 'q.limit',
			inputs: [],
			limit: { ...upwards, vary: 'a.x', until: 'q.flat_first', reaches: 12 },
		}),
		elsewhere({ ...told, id: 'q.elsewhere', elsewhere: { of: 'q.flat_first', with: { 'a.x': 'a.y' } } }),
		quantity({
			...told,
			id: 'q.late',
			inputs: ['a.x', 'a.late'],
			compute: read => read.number('a.x') * read.number('a.late'),
		}),
		limit({
			...told,
			id: 'q.late_limit',
			inputs: [],
			limit: { ...upwards, from: 3, vary: 'a.x', until: 'q.late', reaches: 12 },
		}),
		quantity({
			...told,
			id: 'q.bounded',
			inputs: ['a.slope'],
			compute: read => new Bounded(5, read.number('a.slope') > 2 ? 'above' : 'below'),
		}),
		quantity({
			...told,
			id: 'q.refuses',
			inputs: ['a.slope'],
			compute: read => {
				throw new OutOfRange('slope', read.number('a.slope'), 'none');
			},
		}),
		quantity({ ...told, id: 'q.rests', inputs: ['q.bounded', 'q.refuses'], compute: read => read.number('q.refuses') }),
	] as AnyQuantity[],
);

const answer = (value: number): GivenAnswer => ({ value, assumed: value === 4 ? ['a.density'] : [] });
const some = [undefined, answer(0.1), answer(1), answer(2), answer(3), answer(4)];
const sheet = (...given: (GivenAnswer | undefined)[]) =>
	new Map(
		['a.x', 'a.y', 'a.slope', 'a.late'].flatMap((id, index) => (given[index] ? [[id, given[index]] as const] : [])),
	);

const seen = ({ values, missing, assumed, bounds, broken, given }: State) => ({
	values,
	missing,
	assumed,
	bounds: new Map([...bounds].sort()),
	broken: new Map([...broken].sort()),
	given,
});

test('a pass made from another is what it would be by itself, for every two sheets that differ in one answer', () => {
	const base = [some[1], some[3], some[3], some[3]];
	for (const started of [base, [some[4], some[3], undefined, some[5]], [undefined, undefined, some[2], some[2]]]) {
		for (const place of started.keys()) {
			for (const from of some) {
				for (const to of some) {
					const [before, after] = [from, to].map(given => sheet(...started.with(place, given)));
					const again = solveAgain(solve(graph, before!), after!);
					expect(seen(again.state)).toEqual(seen(solve(graph, after!)));
				}
			}
		}
	}
});

test('only what moved is marked: a figure that comes out as before moves nothing behind it', () => {
	const before = solve(graph, sheet(some[1], some[3], some[3], undefined));
	const { moved, touched } = solveAgain(before, sheet(some[1], some[3], some[4], undefined));
	const marked = (marks: Readonly<Uint8Array>) =>
		graph.nodes.filter(({ slot }) => marks[slot] === 1).map(({ id }) => id);
	expect(marked(moved)).toEqual(['a.slope', 'q.limit', 'q.elsewhere', 'q.bounded', 'q.refuses', 'q.rests']);
	expect(marked(touched)).toEqual(['a.slope', 'q.flat_first', ...marked(moved).slice(1)]);
});
