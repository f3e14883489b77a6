import { expect, test } from 'vitest';
import { evaluationOn, run } from '../../src/graph/evaluation.ts';
import { latinHypercube } from '../../src/graph/latin-hypercube.ts';
import { LimitNode } from '../../src/graph/limit.ts';
import { between } from '../../src/graph/paths.ts';
import { drawnLimit, rootOf } from '../../src/graph/root.ts';
import { evaluate, solve } from '../../src/graph/solve.ts';
import type { Spare } from '../../src/physics/solve.ts';
import { runsOut } from '../../src/physics/solve.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import { seed } from '../counts.ts';
import { buildSheet, testModel } from '../support/model.ts';

const { graph, rulebook } = testModel();
const numbers = rulebook.questions.filter(({ of }) => of.length > 0).map(({ id }) => graph.slotOf.get(id)!);
const limits = graph.nodes.filter(node => node instanceof LimitNode);

test.each(['boosted', 'unboosted'] as const)(
	'every limit of the %s build is found from its nominal root where the full search finds it, on 20 draws of its answers',
	name => {
		const state = solve(graph, givenAnswers(buildSheet(name), rulebook.questions));
		const { values, given } = state;
		const moved = [...given].filter(([slot]) => typeof values[slot] === 'number' && numbers.includes(slot));
		const placed = limits.filter(
			({ id, expensive }) => !expensive && typeof values[graph.slotOf.get(id)!] === 'number',
		);
		expect(placed.length).toBeGreaterThan(2);
		const points = latinHypercube(
			moved.map(([slot]) => graph.nodes[slot]!.id),
			20,
			seed,
		);
		const z = new Float64Array(moved.length);
		for (let draw = 0; draw < 20; draw++) {
			points.point(draw, z);
			const drawn = values.slice();
			for (const [index, [slot]] of moved.entries()) drawn[slot] = (values[slot] as number) * (1 + 0.02 * z[index]!);
			const order = graph.order.filter(slot => !given.has(slot) && !graph.nodes[slot]!.expensive);
			const at = evaluationOn({ graph, values: drawn, given });
			run(at, order);
			for (const node of placed) {
				const { from, to } = node.limit;
				const full = drawn[graph.slotOf.get(node.id)!];
				const near = drawnLimit(at, node, rootOf(state, node));
				if (typeof full !== 'number') expect(near, node.id).toBe(full);
				else expect(Math.abs(near! - full), node.id).toBeLessThan(2e-4 * (to - from));
			}
		}
	},
);

test('a limit of a draw takes three looks at most where its nominal root leads, half of what the full search takes or less', () => {
	const state = solve(graph, givenAnswers(buildSheet('boosted'), rulebook.questions));
	const target = graph.slotOf.get('boost.target')!;
	const efficiency = graph.slotOf.get('engine.volumetric_efficiency')!;
	for (const id of ['injectors.boost_limit', 'sensors.meter_boost_limit', 'ignition.boost_limit']) {
		const node = limits.find(limit => limit.id === id)!;
		const looks = (root: ReturnType<typeof rootOf>): number => {
			const values = state.values.slice();
			const at = evaluationOn({ graph, values, given: state.given });
			values[efficiency] = (values[efficiency] as number) * 1.03;
			run(at, between(graph, [efficiency], [target, graph.slotOf.get(node.limit.until)!]));
			let count = 0;
			const counting = Object.create(node, {
				withSpare: {
					value: (on: typeof at, use: (spare: Spare) => unknown) =>
						node.withSpare(on, spare =>
							use(x => {
								count++;
								return spare(x);
							}),
						),
				},
			}) as LimitNode;
			drawnLimit(at, counting, root);
			return count;
		};
		const led = looks(rootOf(state, node));
		expect(led, id).toBeGreaterThan(0);
		expect(led, id).toBeLessThanOrEqual(3);
		expect(looks(null), id).toBeGreaterThanOrEqual(2 * led);
	}
});

test('finding a limit leaves every value as it was', () => {
	const state = solve(graph, givenAnswers(buildSheet('boosted'), rulebook.questions));
	const before = state.values.slice();
	for (const node of limits) rootOf(state, node);
	expect(state.values).toEqual(before);
	expect(evaluate(state, ['boost.lowest_limit'], {})).toEqual([before[graph.slotOf.get('boost.lowest_limit')!]]);
});

test('a limit that takes cycles of the cylinder lies where the full search finds it', () => {
	const state = solve(graph, givenAnswers(buildSheet('boosted'), rulebook.questions));
	const placed = limits.filter(({ id, expensive }) => {
		const slot = graph.slotOf.get(id)!;
		return expensive && typeof state.values[slot] === 'number' && !state.bounds.has(slot);
	});
	expect(placed.length).toBeGreaterThan(3);
	for (const node of placed) {
		const at = evaluationOn(state);
		const { from } = node.limit;
		const to = node.farthest(at);
		const full = node.withSpare(at, spare => runsOut(spare, from, to))!;
		expect(full.bound).toBeNull();
		expect(Math.abs((state.values[graph.slotOf.get(node.id)!] as number) - full.value), node.id).toBeLessThan(
			2e-9 * (to - from),
		);
	}
});
