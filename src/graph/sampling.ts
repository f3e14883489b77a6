import type { Outcome } from '../expressions/tree.ts';
import { evaluationOn, valueAt } from './evaluation.ts';
import { Incomplete, type Strays, type Values } from './graph.ts';
import { LimitNode } from './limit.ts';
import { onWayOf } from './own-band.ts';
import { reach } from './paths.ts';
import { drawnLimit, rootOf } from './root.ts';
import { followed, measureSensitivities } from './sensitivities.ts';
import type { State } from './solve.ts';
import type { Uncertain } from './uncertain.ts';
import { WhatIf } from './what-if.ts';

/** The graph as a function of standard normal coordinates, one for each dimension of each uncertain slot. */
export interface Sampler {
	readonly uncertain: readonly Uncertain[];
	/** Where the coordinates of each uncertain slot begin; those that are a slot's alone come after all others. */
	readonly first: ReadonlyMap<number, number>;
	readonly dimensions: number;
	/** What each coordinate is drawn by: the id of its slot, or the figure that it shares. */
	readonly names: readonly string[];
	/** The names of those coordinates alone that something evaluated moves with; null in the places of the others. */
	readonly used: readonly (string | null)[];
	/** Slots that differ from point to point. */
	readonly affected: ReadonlySet<number>;
	/** The values at one point; the array is used again for the next. All 0 is the nominal point. */
	evaluate(z: ArrayLike<number>): Values;
}

/**
 * Prepares a solved state to be evaluated at many points. Everything that depends on an uncertain slot moves with it.
 * Expensive nodes are not evaluated there: they follow by their sensitivities, measured here once, and stray by their own
 * band. With `targets` only those slots and what they are made from are evaluated; the rest stays nominal.
 */
export function makeSampler(state: State, uncertain: readonly Uncertain[], targets?: readonly number[]): Sampler {
	const { graph } = state;
	const first = new Map<number, number>();
	const names: string[] = [];
	const shared = new Map<string, number>();
	for (const { slot, dimensions: own, figure } of uncertain) {
		const begun = figure === undefined ? undefined : shared.get(figure);
		first.set(slot, begun ?? names.length);
		if (begun !== undefined) continue;
		if (figure !== undefined) shared.set(figure, names.length);
		for (let at = 0; at < own; at++) names.push(`${figure ?? graph.nodes[slot]!.id} ${at}`);
	}
	const alone = new Map<number, number>();
	for (const one of uncertain) if (one.alone) alone.set(one.slot, names.push(`${graph.nodes[one.slot]!.id} alone`) - 1);
	const affected = reach(
		uncertain.map(({ slot }) => slot),
		slot => graph.readers[slot]!,
	);
	const wanted = targets && reach(targets, needsOf(state, uncertain));
	const order = graph.order.filter(
		slot =>
			affected.has(slot) &&
			(!wanted || wanted.has(slot)) &&
			state.values[slot] !== undefined &&
			state.values[slot] !== null,
	);
	const expensive = order.filter(slot => graph.nodes[slot]!.expensive && typeof state.values[slot] === 'number');
	const sensitivities = measureSensitivities(state, expensive, uncertain);
	const values = state.values.slice();
	const ownOf = new Map(uncertain.map(one => [one.slot, one]));
	// What is drawn here begins where its inputs put it.
	const strays = state.strays && new Map([...state.strays].filter(([slot]) => !ownOf.has(slot)));
	const at = evaluationOn({ ...state, values, strays: strays ?? null });
	let drawn: ArrayLike<number> = [];
	const apart = new Map<number, number>();
	/** How much higher a slot with a band strays at this point than on the nominal values. */
	const factorOf = (slot: number): number => {
		if (!apart.has(slot)) apart.set(slot, strayOf(state, slot));
		return (ownOf.get(slot)!.apply(1, drawn, first.get(slot)!) as number) / apart.get(slot)!;
	};
	// Where a limit is looked for, what lies on its way strays as it does at this point.
	const ways = new Set(order.flatMap(slot => onWay(state, slot)));
	const straying: Strays = new Map([
		...(strays ?? []),
		...uncertain.flatMap(({ slot, apply }): [number, (value: Outcome) => Outcome][] =>
			ways.has(slot) ? [[slot, value => apply(value, drawn, first.get(slot)!)]] : [],
		),
	]);
	const search = evaluationOn({ ...state, values, strays: straying });

	/** What a slot comes to at a point before it strays by itself. */
	const baseOf = (slot: number): (() => Outcome) => {
		const node = graph.nodes[slot]!;
		const nominal = state.values[slot];
		const given = state.given.get(slot);
		if (state.replaced.has(slot)) return () => nominal;
		if (node.expensive) {
			const by = ownOf.has(slot) ? strayOf(state, slot) : 1;
			return () => {
				const value = sensitivities.follow(slot, values, factorOf);
				return by === 1 || typeof value !== 'number' ? value : value / by;
			};
		}
		if (given && !(given.value instanceof Incomplete)) {
			const held = state.strays?.has(slot) && ownOf.has(slot) ? given.value : nominal;
			return () => held;
		}
		if (!(node instanceof LimitNode)) return () => valueAt(at, slot);
		const root = rootOf(state, node);
		const isStep = root === null && !state.bounds.has(slot);
		return () => drawnLimit(search, node, root, isStep);
	};
	const steps = order.map(slot => ({
		slot,
		base: baseOf(slot),
		own: ownOf.get(slot),
		first: first.get(slot) ?? 0,
		alone: alone.get(slot),
	}));
	const used: (string | null)[] = names.map(() => null);
	const above = targets && reach(targets, slot => graph.feeds[slot]!);
	for (const { slot, dimensions: own } of uncertain) {
		if (above && !above.has(slot)) continue;
		const from = first.get(slot)!;
		for (let at = from; at < from + own; at++) used[at] = names[at]!;
		const apart = alone.get(slot);
		if (apart !== undefined) used[apart] = names[apart]!;
	}
	return {
		uncertain,
		first,
		dimensions: names.length,
		names,
		used,
		affected,
		evaluate(z) {
			drawn = z;
			for (let place = 0; place < steps.length; place++) {
				const { slot, base, own, first, alone } = steps[place]!;
				const value = base();
				const strays = own && value !== undefined && value !== null;
				values[slot] = strays ? own.apply(value, z, first, alone === undefined ? 0 : z[alone]) : value;
			}
			return values;
		},
	};
}

/** What a slot is made from in a draw: an expensive node of the inputs that it follows, a what-if of what it does not set itself. */
function needsOf(state: State, uncertain: readonly Uncertain[]): (slot: number) => readonly number[] {
	const { graph } = state;
	const inputs = followed(state, uncertain).map(({ slot }) => slot);
	return slot => {
		const node = graph.nodes[slot]!;
		if (node.expensive) {
			const above = reach([slot], feeder => graph.feeds[feeder]!);
			return inputs.filter(input => above.has(input));
		}
		return node instanceof WhatIf ? node.affectedBy(graph) : graph.feeds[slot]!;
	};
}

/** What lies on the way of a limit that is looked for anew in each draw. */
function onWay(state: State, slot: number): readonly number[] {
	const node = state.graph.nodes[slot]!;
	return node instanceof LimitNode && !node.expensive ? [...onWayOf(state, node)] : [];
}

/** The factor by which a figure strays from what its inputs say. */
function strayOf(state: State, slot: number): number {
	if (!state.strays?.has(slot) || typeof state.values[slot] !== 'number') return 1;
	const straight = valueAt(evaluationOn({ ...state, values: state.values.slice(), strays: null }), slot);
	return Number(state.values[slot]) / Number(straight);
}
