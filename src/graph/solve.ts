import type { Outcome } from '../expressions/tree.ts';
import { type Base, evaluationOn, run } from './evaluation.ts';
import { type Given, type Graph, type Strays, slotNamed, type Trace, type Values } from './graph.ts';
import { between, reach } from './paths.ts';
import { emptyTrace } from './trace.ts';

/** What the graph came to: the value of each slot, and for each why it is not known or what it takes for granted. */
export interface State extends Readonly<Trace> {
	readonly graph: Graph;
	readonly values: Values;
	readonly given: ReadonlyMap<number, Given>;
	/** Slots whose value was set from outside, as a rule's example does. */
	readonly replaced: ReadonlySet<number>;
	/** How some slots stray from what their inputs say. */
	readonly strays?: Strays;
}

/**
 * Evaluates every slot once, with a trace.
 * `replaced` sets slots outright (by id), whatever would go into them.
 * `strays` moves slots off what their inputs say.
 * With `targets` only those and what they are made from are evaluated; the rest stays not known.
 */
export function solve(
	graph: Graph,
	inputs: ReadonlyMap<string, Given>,
	replaced: ReadonlyMap<string, Outcome> = new Map(),
	targets?: readonly string[],
	strays?: Strays,
): State {
	const given = new Map<number, Given>();
	for (const [id, input] of inputs) given.set(slotNamed(graph, id), input);
	const values = new Array<Outcome>(graph.nodes.length).fill(undefined);
	const fixed = new Set<number>();
	for (const [id, value] of replaced) {
		const slot = slotNamed(graph, id);
		fixed.add(slot);
		values[slot] = value;
	}
	const trace = emptyTrace(graph.nodes.length);
	const wanted =
		targets &&
		reach(
			targets.map(id => slotNamed(graph, id)),
			slot => graph.feeds[slot]!,
		);
	const order = graph.order.filter(slot => !fixed.has(slot) && (!wanted || wanted.has(slot)));
	const straying = strays ? { strays } : {};
	run(evaluationOn({ graph, values, given, ...straying }, trace), order);
	return { graph, values, given, replaced: fixed, ...straying, ...trace };
}

/** The values of some nodes with others replaced: the one call behind limits, charts, what-if and the next measurement. */
export function evaluate(
	base: Base & { readonly replaced?: ReadonlySet<number> },
	targets: readonly string[],
	replaced: Readonly<Record<string, Outcome>>,
): readonly Outcome[] {
	const { graph } = base;
	const slots = targets.map(id => slotNamed(graph, id));
	const values = base.values.slice();
	const varied = Object.entries(replaced).map(([id, value]) => {
		const slot = slotNamed(graph, id);
		values[slot] = value;
		return slot;
	});
	const order = between(graph, varied, slots);
	run(evaluationOn({ ...base, values }), base.replaced?.size ? order.filter(slot => !base.replaced!.has(slot)) : order);
	return slots.map(slot => values[slot]);
}

/** The value of an answer or a quantity; undefined where it is not known, or there is none of that id. */
export function valueIn({ graph, values }: Pick<State, 'graph' | 'values'>, id: string): Outcome {
	const slot = graph.slotOf.get(id);
	return slot === undefined ? undefined : values[slot];
}

/** The number of an answer or a quantity; NaN where it is not known or none. */
export function numberIn(state: Pick<State, 'graph' | 'values'>, id: string): number {
	const value = valueIn(state, id);
	return typeof value === 'number' ? value : Number.NaN;
}
