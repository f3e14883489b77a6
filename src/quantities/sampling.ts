import type { Outcome } from '../expressions/tree.ts';
import type { Answer } from '../sheet/sheet.ts';
import { AtDensity } from './answers.ts';
import type { Node } from './graph.ts';
import { Inputs, type Values } from './inputs.ts';
import { noiseOf } from './noise.ts';
import type { State } from './pass.ts';
import { reach } from './replace.ts';
import { drawnLimit, rootOf } from './root.ts';
import { valueIn } from './run.ts';
import { makeSequence } from './sequence.ts';
import { measureSlopes } from './slopes.ts';

/** The whole graph drawn again and again, each uncertain answer and usual value straying within its spread. */
export interface Sampling {
	/** Slots that may differ from draw to draw. */
	readonly moving: ReadonlySet<number>;
	/** The values of one draw; the array is used again for the next. */
	draw(index: number): Values;
}

/**
 * Prepares draws of a solved state. Everything downstream of one uncertain answer moves with it. The cylinder model is not
 * run inside a draw: its figures follow by their slopes, measured here once an answer, and stray by the model's own band.
 */
export function makeSampling(state: State, answers: (id: string) => Answer | undefined, seed: number): Sampling {
	const { graph } = state;
	const noises = graph.nodes.flatMap(node => noiseOf(node, state, node.question ? answers(node.id) : undefined) ?? []);
	const noiseAt = new Map(noises.map(noise => [noise.slot, noise]));
	const firstDimension = new Map<number, number>();
	let dimensions = 0;
	for (const { slot, dimensions: own } of noises) {
		firstDimension.set(slot, dimensions);
		dimensions += own;
	}
	const sequence = makeSequence(seed, Math.max(1, dimensions));
	const moving = reach(
		noises.map(({ slot }) => slot),
		slot => graph.readers[slot]!,
	);
	const order = graph.order.filter(
		slot => moving.has(slot) && state.values[slot] !== undefined && state.values[slot] !== null,
	);
	const heavy = order.filter(slot => graph.nodes[slot]!.heavy && typeof state.values[slot] === 'number');
	const slopes = measureSlopes(state, heavy, noises);
	const values = state.values.slice();
	const inputs = new Inputs(graph.slotOf, values);

	/** What a node comes to in a draw before its own noise. */
	const baseOf = (node: Node): (() => Outcome) => {
		const { slot } = node;
		const nominal = state.values[slot];
		const given = state.given.get(slot);
		if (node.heavy) return () => slopes.follow(slot, values);
		if (given && !(given.value instanceof AtDensity)) return () => nominal;
		if (!node.limit) return () => valueIn(graph, values, state.given, node, inputs);
		const root = rootOf(state, node);
		return () => drawnLimit(state, values, node, root);
	};
	let draw = 0;
	const steps = order.map(slot => {
		const first = firstDimension.get(slot) ?? 0;
		const deviate = (dimension: number) => sequence(draw, first + dimension);
		return { slot, base: baseOf(graph.nodes[slot]!), noise: noiseAt.get(slot), deviate };
	});
	return {
		moving,
		draw(index) {
			draw = index;
			for (const { slot, base, noise, deviate } of steps) {
				const value = base();
				const strays = noise && value !== undefined && value !== null;
				values[slot] = strays ? noise.apply(value, deviate) : value;
			}
			return values;
		},
	};
}
