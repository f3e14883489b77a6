import type { Graph } from '../graph/graph.ts';
import { quantities } from '../log/quantities.ts';
import { modelGraph } from '../quantities/model-graph.ts';
import type { AnyQuantity } from '../quantities/quantity.ts';
import { Judge } from '../rulebook/judge.ts';
import type { Rulebook } from '../rulebook/rulebook.ts';
import type { UnitSet } from '../sheet/question.ts';
import { Wording } from '../wording/template.ts';
import { type PrintedQuantities, printedQuantities } from './quantity-values.ts';

type Hash = (text: string) => string;

/** A rulebook with the graph that its questions and the quantities make, ready to judge sheet after sheet. */
export interface Model {
	readonly rulebook: Rulebook;
	/** Stands for exactly these rules: sha256 of the compiled rules, sorted by id. */
	readonly fingerprint: string;
	readonly quantities: readonly AnyQuantity[];
	/** Those of them that an audit prints. */
	readonly printed: PrintedQuantities;
	readonly graph: Graph;
	readonly judge: Judge;
	readonly wordings: Readonly<Record<UnitSet, Wording>>;
	readonly hash: Hash;
}

/** Stands for exactly these rules: where they are written and their examples apart. */
export function fingerprintOf({ rules }: Rulebook, hash: Hash): string {
	const sorted = [...rules]
		.sort((a, b) => (a.id < b.id ? -1 : 1))
		.map(({ at: _at, examples: _examples, ...rule }) => rule);
	return hash(JSON.stringify(sorted));
}

/** Builds the model once; `hash` is handed in, for this room knows no machine. The build has worked out the fingerprint. */
export function makeModel(rulebook: Rulebook, hash: Hash, fingerprint = fingerprintOf(rulebook, hash)): Model {
	const graph = modelGraph(rulebook.questions, quantities);
	return {
		rulebook,
		fingerprint,
		quantities,
		printed: printedQuantities(graph, quantities),
		graph,
		wordings: {
			us: new Wording(rulebook.questions, quantities, 'us'),
			metric: new Wording(rulebook.questions, quantities, 'metric'),
		},
		judge: new Judge(rulebook, graph.slotOf),
		hash,
	};
}
