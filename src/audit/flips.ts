import type { Outcome } from '../expressions/tree.ts';
import type { Graph, Node } from '../quantities/graph.ts';
import { Inputs, type Values } from '../quantities/inputs.ts';
import type { State } from '../quantities/pass.ts';
import type { LimitQuantity } from '../quantities/quantity.ts';
import { between, reach, slotNamed } from '../quantities/replace.ts';
import { valueIn } from '../quantities/run.ts';
import type { Rule } from '../rulebook/rulebook.ts';
import type { Model } from './model.ts';

/** Tells which rules have a verdict that is not the same for all the candidates of an answer. */
export type Flips = (slot: number, candidates: readonly Outcome[]) => Rule[];

/** What serves every answer is made once: which nodes a rule looks at in the end, and which of them each one moves. */
export function makeFlips({ judge, graph, rulebook }: Model, state: State): Flips {
	const sources = graph.nodes.map(node => sourcesOf(graph, node));
	const told = graph.order.filter(slot => judge.placesReading(slot).length > 0);
	const needed = reach(told, slot => sources[slot]!);
	const order = graph.order.filter(slot => needed.has(slot));
	/** For each slot the places in `order` that have to be worked out anew when it changes. */
	const moves: number[][] = graph.nodes.map(() => []);
	for (const [place, slot] of order.entries()) for (const source of sources[slot]!) moves[source]!.push(place);
	const given = new Map(state.given);

	/** The values with one of them replaced; what could tell of it is put among the rules touched. */
	const tryOut = (slot: number, candidate: Outcome, touched: Set<number>): Values => {
		const values = state.values.slice();
		const inputs = new Inputs(graph.slotOf, values);
		const stale = new Uint8Array(order.length);
		const set = (changed: number, value: Outcome): void => {
			if (Object.is(value, values[changed])) return;
			values[changed] = value;
			for (const rule of judge.placesReading(changed)) touched.add(rule);
			for (const place of moves[changed]!) stale[place] = 1;
		};
		given.set(slot, { value: candidate, assumed: [] });
		set(slot, candidate);
		for (let place = stale.indexOf(1); place >= 0; place = stale.indexOf(1, place + 1)) {
			const next = order[place]!;
			set(next, valueIn(graph, values, given, graph.nodes[next]!, inputs));
		}
		return values;
	};

	return (slot, candidates) => {
		if (!needed.has(slot)) return [];
		const touched = new Set<number>();
		const tried = candidates.map(candidate => tryOut(slot, candidate, touched));
		const answer = state.given.get(slot);
		if (answer) given.set(slot, answer);
		else given.delete(slot);
		const wordsIn = (rule: number, values: Values) => judge.wordsOf(rule, values).join();
		return [...touched]
			.filter(rule => {
				const words = wordsIn(rule, tried[0]!);
				return tried.some((values, index) => index > 0 && wordsIn(rule, values) !== words);
			})
			.map(rule => rulebook.rules[rule]!);
	};
}

/**
 * The slots that a node's value moves with. A limit and a quantity elsewhere move with whatever goes into the nodes that
 * they work out anew, and not with the value that these have here. A limit of the cylinder model stays where it is: each
 * trial would run the model dozens of times.
 */
function sourcesOf(graph: Graph, node: Node): readonly number[] {
	const { limit, elsewhere, quantity } = node;
	if (!limit && !elsewhere) return graph.feeds[node.slot]!;
	if (node.heavy) return [];
	const named = (ids: readonly string[]) => ids.map(id => slotNamed(graph, id));
	const varied = named(limit ? [limit.vary] : Object.keys(elsewhere!.with));
	const ends = named(limit ? [limit.until, limit.reaches].filter(id => typeof id === 'string') : [elsewhere!.of]);
	const own = limit
		? [...(quantity as LimitQuantity).inputs, ...(limit.end ? [limit.end] : [])]
		: Object.values(elsewhere!.with);
	const within = between(graph, varied, ends);
	const into = within.flatMap(slot => sourcesOf(graph, graph.nodes[slot]!));
	const apart = new Set([...into, ...ends].filter(slot => !within.includes(slot) && !varied.includes(slot)));
	return [...apart, ...named(own)];
}
