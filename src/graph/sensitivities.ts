import type { Outcome } from '../expressions/tree.ts';
import { evaluationOn, run } from './evaluation.ts';
import { slotNamed } from './graph.ts';
import { LimitNode } from './limit.ts';
import { onWayOf, ownBands } from './own-band.ts';
import { between, reach } from './paths.ts';
import { type Root, rootOf } from './root.ts';
import { evaluate, type State } from './solve.ts';
import type { Uncertain } from './uncertain.ts';

/** At most so many inputs are followed into the expensive nodes. */
const mostFollowed = 16;

const none: readonly never[] = [];

/** How each expensive node moves with the inputs that it depends on. */
export interface Sensitivities {
	/** An expensive node on the values of a draw. `factorOf`: how much higher a slot strays there than on the nominal values. */
	follow(slot: number, values: readonly Outcome[], factorOf: (slot: number) => number): Outcome;
}

/**
 * Measures the sensitivities of the expensive nodes: they are evaluated once an uncertain input, the least certain first, at
 * the nominal point and where each limit among them lies. A limit moves by what its spare moves over how steep its spare is.
 * What has a band of its own on the way into one is followed to both ends of that.
 */
export function measureSensitivities(
	state: State,
	expensive: readonly number[],
	uncertain: readonly Uncertain[],
): Sensitivities {
	const { graph, values } = state;
	const limits = expensive.flatMap(slot => {
		const node = graph.nodes[slot]!;
		const root = node instanceof LimitNode ? rootOf(state, node) : null;
		if (!root || !(node instanceof LimitNode)) return [];
		const spare = spareAt(state, node, root);
		return [{ slot, node, root, spare, unchanged: spare({}), way: onWayOf(state, node) }];
	});
	const formulas = expensive.filter(slot => !(graph.nodes[slot] instanceof LimitNode));
	const ids = formulas.map(slot => graph.nodes[slot]!.id);
	const moves = new Map<number, { readonly from: number; readonly by: number }[]>();
	for (const { slot, difference } of followed(state, uncertain)) {
		const changed = { [graph.nodes[slot]!.id]: (values[slot] as number) + difference };
		const note = (to: number, change: number) => {
			if (Number.isFinite(change) && change !== 0)
				moves.set(to, [...(moves.get(to) ?? []), { from: slot, by: change / difference }]);
		};
		const at = evaluate(state, ids, changed);
		for (const [index, to] of formulas.entries()) note(to, Number(at[index]) - Number(values[to]));
		for (const { slot: to, root, spare, unchanged, way } of limits)
			if (!way.has(slot)) note(to, (unchanged - spare(changed)) / root.slope);
	}
	const starts = new Map<number, number>(limits.map(({ slot, root }) => [slot, root.at]));
	const bands = new Map(limits.map(({ slot, node, root }) => [slot, ownBands(state, node, root, uncertain)]));
	return {
		follow(slot, drawn, factorOf) {
			let value = starts.get(slot) ?? values[slot];
			if (typeof value !== 'number') return value;
			const moved = moves.get(slot) ?? none;
			for (let place = 0; place < moved.length; place++) {
				const { from, by } = moved[place]!;
				value += by * ((drawn[from] as number) - (values[from] as number));
			}
			const own = bands.get(slot) ?? none;
			for (let place = 0; place < own.length; place++) value += own[place]!.move(factorOf(own[place]!.slot));
			const node = graph.nodes[slot]!;
			return node instanceof LimitNode ? Math.max(node.limit.from, Math.min(node.limit.to, value)) : value;
		},
	};
}

/**
 * The inputs that are followed: what any expensive node is made from and is not certain. The same ones whichever nodes are asked
 * for, so that a figure does not hang on what else is.
 */
export function followed({ graph, values }: State, uncertain: readonly Uncertain[]): Uncertain[] {
	const isNumber = (slot: number) => typeof values[slot] === 'number';
	const expensive = new Set(graph.order.filter(slot => graph.nodes[slot]!.expensive && isNumber(slot)));
	const above = reach([...expensive], slot => graph.feeds[slot]!);
	const unsure = ({ slot, difference }: Uncertain) => difference / Math.abs(values[slot] as number);
	return uncertain
		.filter(({ slot, difference }) => above.has(slot) && difference > 0 && isNumber(slot) && !expensive.has(slot))
		.sort((a, b) => unsure(b) - unsure(a) || a.slot - b.slot)
		.slice(0, mostFollowed);
}

/** What is spare where a limit lies, with some inputs changed: only what they move is evaluated again. */
function spareAt(state: State, node: LimitNode, root: Root): (changed: Readonly<Record<string, Outcome>>) => number {
	const { graph } = state;
	const { vary, until, reaches, rising, from, to } = node.limit;
	const ends = typeof reaches === 'number' ? [until] : [until, reaches];
	const values = state.values.slice();
	// A root that lies outside is followed from the nearest place that was looked at.
	const slot = slotNamed(graph, vary);
	values[slot] = Math.max(from, Math.min(to, root.at));
	const targets = ends.map(id => slotNamed(graph, id));
	run(evaluationOn({ ...state, values }), between(graph, [slot], targets));
	const there = { ...state, values, replaced: new Set([...state.replaced, slot]) };
	return ({ [vary]: _, ...changed }) => {
		const [value, end = reaches] = evaluate(there, ends, changed);
		return (rising ? 1 : -1) * (Number(end) - Number(value));
	};
}
