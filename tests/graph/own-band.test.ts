import { describe, expect, test } from 'vitest';
import { Constant } from '../../src/graph/constant.ts';
import { Formula } from '../../src/graph/formula.ts';
import { makeGraph, type Strays, slotNamed } from '../../src/graph/graph.ts';
import { LimitNode } from '../../src/graph/limit.ts';
import { onWayOf, ownBands } from '../../src/graph/own-band.ts';
import { rootOf } from '../../src/graph/root.ts';
import { solve } from '../../src/graph/solve.ts';
import { bandedNumber } from '../../src/graph/uncertain.ts';

// A load of 2 x against a strength of 10 + x: they meet at x = 10. With the load f times as high they meet where
// 2 f x = 10 + x, at 10 / (2 f - 1); with the strength f times as high, at 10 f / (2 - f). Plain algebra.
const underLoad = (f: number) => 10 / (2 * f - 1);
const ofStrength = (f: number) => (10 * f) / (2 - f);
const band = [0.8, 1.25] as const;

function car(expensive: boolean, to = 30, stray = 1) {
	const formula = (id: string, dependencies: readonly string[], make: (of: (id: string) => number) => number) =>
		new Formula({ id, dependencies, expensive, assumes: [], formula: q => make(id => q.number(id)) });
	const limit = new LimitNode(
		'limit',
		{ vary: 'x', until: 'load', reaches: 'strength', rising: true, from: 0, to },
		[],
		undefined,
		expensive,
	);
	const graph = makeGraph([
		new Constant('x', 1, 'x'),
		formula('middle', ['x'], of => of('x')),
		formula('load', ['middle'], of => 2 * of('middle')),
		formula('strength', ['x'], of => 10 + of('x')),
		formula('aside', ['x'], of => of('x')),
		limit,
	]);
	const slot = (id: string) => slotNamed(graph, id);
	const strays: Strays = new Map(stray === 1 ? [] : [[slot('load'), value => (value as number) * stray]]);
	const state = solve(graph, new Map(), new Map(), undefined, strays);
	const bands = ['middle', 'load', 'strength', 'aside'].map(id =>
		bandedNumber(slot(id), band, state.values[slot(id)] as number),
	);
	const found = ownBands(state, limit, rootOf(state, limit)!, bands);
	const name = (at: number) => graph.nodes[at]!.id;
	return {
		root: state.values[slot('limit')],
		way: [...onWayOf(state, limit)].map(name).sort(),
		moves: new Map(found.map(({ slot, move }) => [name(slot), move])),
	};
}

describe('a band of a node on the way to a limit', () => {
	test.each([
		['load', underLoad],
		['strength', ofStrength],
	] as const)('of %s moves it to where the search finds it with that node at the ends of the band', (id, where) => {
		const { root, moves } = car(true);
		expect(root).toBeCloseTo(10, 8);
		const move = moves.get(id)!;
		for (const factor of band) expect(move(factor)).toBeCloseTo(where(factor) - 10, 2);
		expect(move(1)).toBeCloseTo(0, 12);
		// Straight in the logarithm between the ends, each side by its own end.
		expect(move(0.9)).toBeCloseTo((Math.log(0.9) / Math.log(0.8)) * (where(0.8) - 10), 2);
		expect(move(1.1)).toBeCloseTo((Math.log(1.1) / Math.log(1.25)) * (where(1.25) - 10), 2);
	});

	test('where the limit then lies beyond its range it is where a straight line leads', () => {
		const { moves } = car(true, 12);
		expect(moves.get('load')!(0.8)).toBeCloseTo(underLoad(0.8) - 10, 2);
		expect(moves.get('load')!(1.25)).toBeCloseTo(underLoad(1.25) - 10, 2);
	});

	test('comes on top of where a fit has moved that node', () => {
		const { root, moves } = car(true, 30, 1.1);
		expect(root).toBeCloseTo(underLoad(1.1), 8);
		for (const factor of band)
			expect(moves.get('load')!(factor)).toBeCloseTo(underLoad(1.1 * factor) - underLoad(1.1), 2);
	});
});

test('only what lies between what is varied and both ends is on the way; behind an expensive end nothing is', () => {
	expect(car(true).way).toEqual(['load', 'strength']);
	expect([...car(true).moves.keys()].sort()).toEqual(['load', 'strength']);
	expect(car(false).way).toEqual(['load', 'middle', 'strength']);
	expect([...car(false).moves.keys()].sort()).toEqual(['load', 'middle', 'strength']);
});
