import { type Graph, makeGraph } from '../quantities/graph.ts';
import { quantities } from '../quantities/model/all.ts';
import type { AnyQuantity } from '../quantities/quantity.ts';
import { Judge } from '../rulebook/judge.ts';
import type { Rulebook } from '../rulebook/rulebook.ts';

/** A rulebook with the graph that its questions and the quantities make, ready to judge sheet after sheet. */
export interface Model {
	readonly rulebook: Rulebook;
	/** Stands for exactly these rules: sha256 of the compiled rules, sorted by id. */
	readonly fingerprint: string;
	readonly quantities: readonly AnyQuantity[];
	readonly graph: Graph;
	readonly judge: Judge;
	readonly hash: (text: string) => string;
}

/** Builds the model once; `hash` is handed in, for this room knows no machine. */
export function makeModel(rulebook: Rulebook, hash: (text: string) => string): Model {
	const graph = makeGraph(rulebook.questions, quantities);
	const sorted = [...rulebook.rules]
		.sort((a, b) => (a.id < b.id ? -1 : 1))
		.map(({ at: _at, examples: _examples, ...rule }) => rule);
	return {
		rulebook,
		fingerprint: hash(JSON.stringify(sorted)),
		quantities,
		graph,
		judge: new Judge(rulebook, graph.slotOf),
		hash,
	};
}
