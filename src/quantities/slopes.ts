import type { Outcome } from '../expressions/tree.ts';
import type { Node } from './graph.ts';
import type { Noise } from './noise.ts';
import type { State } from './pass.ts';
import { between, evaluate, reach, slotNamed } from './replace.ts';
import { type Root, rootOf } from './root.ts';
import { run } from './run.ts';

/** At most so many answers are followed into the cylinder model. */
const mostFollowed = 16;

/** How each figure of the cylinder model moves with the answers that it depends on. */
export interface Slopes {
	/** A heavy figure on the values of a draw. */
	follow(slot: number, values: readonly Outcome[]): Outcome;
}

/**
 * Measures the slopes of the heavy figures: the cylinder model runs once an uncertain answer, the least certain first, at
 * the nominal point and where each heavy limit lies. A limit moves by what its spare moves over how steep its spare is.
 */
export function measureSlopes(state: State, heavy: readonly number[], noises: readonly Noise[]): Slopes {
	const { graph, values } = state;
	const nodes = heavy.map(slot => graph.nodes[slot]!);
	const plain = nodes.filter(({ limit }) => limit === null);
	const limits = nodes.flatMap(node => {
		const root = node.limit && rootOf(state, node);
		if (!root) return [];
		const spare = spareAt(state, node, root);
		return [{ node, root, spare, unchanged: spare({}) }];
	});
	const moves = new Map<number, { readonly from: number; readonly by: number }[]>();
	for (const { slot, difference } of followed(state, heavy, noises)) {
		const changed = { [graph.nodes[slot]!.id]: (values[slot] as number) + difference };
		const note = (to: number, change: number) => {
			if (Number.isFinite(change) && change !== 0)
				moves.set(to, [...(moves.get(to) ?? []), { from: slot, by: change / difference }]);
		};
		const at = evaluate(
			state,
			plain.map(({ id }) => id),
			changed,
		);
		for (const [index, node] of plain.entries()) note(node.slot, Number(at[index]) - Number(values[node.slot]));
		for (const { node, root, spare, unchanged } of limits) note(node.slot, (unchanged - spare(changed)) / root.slope);
	}
	const starts = new Map<number, number>(limits.map(({ node, root }) => [node.slot, root.at]));
	return {
		follow(slot, drawn) {
			let value = starts.get(slot) ?? values[slot];
			if (typeof value !== 'number') return value;
			for (const { from, by } of moves.get(slot) ?? [])
				value += by * ((drawn[from] as number) - (values[from] as number));
			const { limit } = graph.nodes[slot]!;
			return limit ? Math.max(limit.from, Math.min(limit.to, value)) : value;
		},
	};
}

/** The answers that are followed: what the heavy figures are made from and is not certain. */
function followed({ graph, values }: State, heavy: readonly number[], noises: readonly Noise[]): Noise[] {
	const above = reach(heavy, slot => graph.feeds[slot]!);
	const unsure = ({ slot, difference }: Noise) => difference / Math.abs(values[slot] as number);
	return noises
		.filter(
			({ slot, difference }) =>
				above.has(slot) && difference > 0 && typeof values[slot] === 'number' && !heavy.includes(slot),
		)
		.sort((a, b) => unsure(b) - unsure(a) || a.slot - b.slot)
		.slice(0, mostFollowed);
}

/** What is spare where a limit lies, with some answers changed: only what they move is computed again. */
function spareAt(state: State, node: Node, root: Root): (changed: Readonly<Record<string, Outcome>>) => number {
	const { graph, given } = state;
	const { vary, until, reaches, rising, from, to } = node.limit!;
	const ends = typeof reaches === 'number' ? [until] : [until, reaches];
	const values = state.values.slice();
	// A root that lies outside is followed from the nearest place that was looked at.
	const slot = slotNamed(graph, vary);
	values[slot] = Math.max(from, Math.min(to, root.at));
	const targets = ends.map(id => slotNamed(graph, id));
	run(graph, values, given, between(graph, [slot], targets));
	const there = { ...state, values, replaced: new Set([...state.replaced, slot]) };
	return ({ [vary]: _, ...changed }) => {
		const [value, end = reaches] = evaluate(there, ends, changed);
		return (rising ? 1 : -1) * (Number(end) - Number(value));
	};
}
