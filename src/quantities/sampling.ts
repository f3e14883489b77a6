import type { Outcome } from '../expressions/tree.ts';
import type { Answer } from '../sheet/sheet.ts';
import { AtDensity } from './answers.ts';
import type { Node } from './graph.ts';
import { Inputs, type Values } from './inputs.ts';
import { type Noise, noiseOf } from './noise.ts';
import { type State, valueIn } from './pass.ts';
import { evaluate, reach } from './replace.ts';
import { makeSequence } from './sequence.ts';

/** The whole graph drawn again and again, each uncertain answer and usual value straying within its spread. */
export interface Sampling {
	/** Slots that may differ from draw to draw. */
	readonly moving: ReadonlySet<number>;
	/** The values of one draw; the array is used again for the next. */
	draw(index: number): Values;
}

/** At most so many answers are followed into the cylinder model. */
const mostSlopes = 12;

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
	const slopes = heavy.length > 0 ? slopesInto(state, heavy, noises) : [];
	const values = state.values.slice();
	const inputs = new Inputs(values);

	/** What a slot comes to before its own noise. */
	const base = (node: Node): Outcome => {
		const { slot } = node;
		if (node.heavy) return follow(slot);
		const given = state.given.get(slot);
		return given && !(given.value instanceof AtDensity)
			? state.values[slot]
			: valueIn(graph, values, state.given, node, inputs);
	};
	const follow = (slot: number): Outcome => {
		const nominal = state.values[slot];
		const place = heavy.indexOf(slot);
		if (place < 0 || typeof nominal !== 'number') return nominal;
		let value = nominal;
		for (const { from, by } of slopes)
			value += by[place]! * ((values[from] as number) - (state.values[from] as number));
		const { limit } = graph.nodes[slot]!;
		return limit ? Math.max(limit.from, Math.min(limit.to, value)) : value;
	};
	return {
		moving,
		draw(index) {
			for (const slot of order) {
				// Each starts from its nominal value: a limit looks for its root from there.
				values[slot] = state.values[slot];
				const value = base(graph.nodes[slot]!);
				const noise = noiseAt.get(slot);
				const first = firstDimension.get(slot)!;
				values[slot] =
					noise && value !== undefined && value !== null
						? noise.apply(value, dimension => sequence(index, first + dimension))
						: value;
			}
			return values;
		},
	};
}

interface Slopes {
	readonly from: number;
	/** Change of each heavy slot for a change of one in `from`. */
	readonly by: readonly number[];
}

/** How each heavy figure moves with each uncertain answer that it depends on; the least certain answers go first. */
function slopesInto(state: State, heavy: readonly number[], noises: readonly Noise[]): Slopes[] {
	const { graph, values } = state;
	const above = reach(heavy, slot => Object.values(graph.nodes[slot]!.slots));
	const share = ({ slot, difference }: Noise) => difference / Math.abs(values[slot] as number);
	const followed = noises
		.filter(
			({ slot, difference }) =>
				above.has(slot) && difference > 0 && typeof values[slot] === 'number' && !heavy.includes(slot),
		)
		.sort((a, b) => share(b) - share(a) || a.slot - b.slot)
		.slice(0, mostSlopes);
	const ids = heavy.map(slot => graph.nodes[slot]!.id);
	return followed.map(({ slot, difference }) => {
		const at = evaluate(state, ids, { [graph.nodes[slot]!.id]: (values[slot] as number) + difference });
		const by = at.map((value, index) =>
			typeof value === 'number' ? (value - (values[heavy[index]!] as number)) / difference : 0,
		);
		return { from: slot, by };
	});
}
