import { nearRoot, runsOut } from '../physics/solve.ts';
import { evaluationOn } from './evaluation.ts';
import { slotNamed } from './graph.ts';
import type { LimitNode } from './limit.ts';
import { between, reach } from './paths.ts';
import { coarse, type Root, straightened } from './root.ts';
import type { State } from './solve.ts';
import { nineOfTen, type Uncertain } from './uncertain.ts';

/** How a limit moves with a node on its way that has a band of its own. */
export interface OwnBand {
	/** The node with the band. */
	readonly slot: number;
	/** The move at a factor on that node; none at 1. */
	move(factor: number): number;
}

/**
 * The bands on the way of an expensive limit, each followed to both of its ends: the limit is looked for anew with that node
 * so much higher or lower. Between them, and beyond, straight in the logarithm of the factor.
 */
export function ownBands(state: State, node: LimitNode, root: Root, uncertain: readonly Uncertain[]): OwnBand[] {
	const way = onWayOf(state, node);
	return uncertain.flatMap(({ slot, apply }): OwnBand[] => {
		if (!way.has(slot) || typeof state.values[slot] !== 'number') return [];
		const factors = [-nineOfTen, nineOfTen].map(deviate => apply(1, [deviate], 0) as number);
		const slopes = factors.map(factor =>
			factor === 1 ? 0 : (movedRoot(state, node, root, slot, factor) - root.at) / Math.log(factor),
		);
		if (!slopes.every(Number.isFinite)) return [];
		return [{ slot, move: factor => Math.log(factor) * (factor < 1 ? slopes[0]! : slopes[1]!) }];
	});
}

/**
 * The nodes between what a limit varies and what it watches and reaches, as far as these move with them in a draw: an
 * expensive formula there follows its inputs alone, as one that is an end of a band does.
 */
export function onWayOf({ graph }: Pick<State, 'graph'>, { limit: { vary, until, reaches } }: LimitNode): Set<number> {
	const ends = [until, ...(typeof reaches === 'number' ? [] : [reaches])].map(id => slotNamed(graph, id));
	const carried = reach(ends, slot => (graph.nodes[slot]!.expensive ? [] : graph.feeds[slot]!));
	return new Set(between(graph, [slotNamed(graph, vary)], ends).filter(slot => carried.has(slot)));
}

function movedRoot(state: State, node: LimitNode, root: Root, own: number, factor: number): number {
	const before = state.strays?.get(own);
	const strays = new Map(state.strays ?? []).set(own, value => ((before ? before(value) : value) as number) * factor);
	const at = evaluationOn({ ...state, values: state.values.slice(), strays });
	const { from } = node.limit;
	const to = node.farthest(at);
	return node.withSpare(at, spare => {
		const start = Math.max(from, Math.min(to, root.at));
		const guess = start - Number(spare(start)) / root.slope;
		const near = guess > from && guess < to ? nearRoot(spare, guess, root.slope, from, to, coarse) : undefined;
		if (near !== undefined) return near;
		const found = runsOut(spare, from, to, undefined, coarse);
		if (!found) return Number.NaN;
		return straightened(spare, node.limit, to, found.value, found.bound !== null)?.at ?? found.value;
	});
}
