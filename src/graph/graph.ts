import type { Outcome } from '../expressions/tree.ts';
import type { Bounded } from './bounded.ts';
import type { Reader } from './reader.ts';

/** The present value of every slot. */
export type Values = Outcome[];

/** A value of an input that other nodes complete: a mass flow given by volume waits for a density. */
export abstract class Incomplete {
	abstract completeWith(value: number): Outcome;
}

/** What an input is given from outside, with the ids of whatever its reading took for granted. */
export interface Given {
	readonly value: Outcome | Incomplete;
	readonly assumed: readonly string[];
}

/** Why a slot is not known, or what it takes for granted. */
export interface Trace {
	/** Inputs that are missing. */
	readonly missing: (readonly string[])[];
	readonly assumed: (readonly string[])[];
	readonly bounds: Map<number, 'above' | 'below'>;
	/** Slots whose formula refused its inputs or gave no finite number, with what it said. */
	readonly broken: Map<number, string>;
}

/** Of slots that are not where their inputs put them: how each strays, as a fit to a log says. */
export type Strays = ReadonlyMap<number, (value: Outcome) => Outcome>;

/** An evaluation of some slots on the values at hand; with a trace, it keeps the reasons as well. */
export interface Evaluation {
	readonly graph: Graph;
	readonly values: Values;
	readonly given: ReadonlyMap<number, Given>;
	/** Looks at the same values. */
	readonly reader: Reader;
	readonly trace: Trace | null;
	readonly strays: Strays | null;
}

/** A place in the graph. Each sort (input, formula, constant, limit, what-if) is a file of this room. */
export interface Node {
	readonly id: string;
	/** Ids of all that it reads. */
	readonly dependencies: readonly string[];
	/** Too slow for a draw: there its sensitivities stand in for it. */
	readonly expensive: boolean;
	/** The value on the values at hand. Not known: undefined. Does not apply: null. */
	evaluate(at: Evaluation, slot: number): Outcome | Bounded;
	/** The same, noting why it is not known or what it takes for granted. */
	trace(at: Evaluation, slot: number, trace: Trace): Outcome | Bounded;
	/** The slots that its value moves with. */
	affectedBy(graph: Graph, slot: number): readonly number[];
	/** Whether its value stays while only these slots are varied, although it depends on them. */
	ignores?(varied: readonly string[]): boolean;
}

/** Every node, each after all that it reads. */
export interface Graph {
	readonly nodes: readonly Node[];
	readonly slotOf: ReadonlyMap<string, number>;
	/** Slots in an order in which each comes after its dependencies. */
	readonly order: readonly number[];
	/** For each slot, its place in that order. */
	readonly places: readonly number[];
	/** For each slot, the slots that it reads, each once, and those that read it. */
	readonly feeds: readonly (readonly number[])[];
	readonly readers: readonly (readonly number[])[];
	/** For each slot, the ids that it may read. */
	readonly declared: readonly ReadonlySet<string>[];
}

/** Puts nodes in order. Refuses two of one id, a dependency that is nowhere, and a circle, naming it. */
export function makeGraph(nodes: readonly Node[]): Graph {
	const slotOf = new Map<string, number>();
	for (const [slot, { id }] of nodes.entries()) {
		if (slotOf.has(id)) throw new TypeError(`${id} is declared twice`);
		slotOf.set(id, slot);
	}
	const feeds = nodes.map(({ id, dependencies }) => {
		const slots = dependencies.map(read => {
			const at = slotOf.get(read);
			if (at === undefined) throw new TypeError(`${id} reads ${read}, which is no answer and no quantity`);
			return at;
		});
		return [...new Set(slots)];
	});
	const readers: number[][] = nodes.map(() => []);
	for (const [slot, fed] of feeds.entries()) for (const other of fed) readers[other]!.push(slot);
	const declared = nodes.map(({ dependencies }) => new Set(dependencies));
	const order = sort(nodes, feeds);
	const places = nodes.map(() => 0);
	for (const [place, slot] of order.entries()) places[slot] = place;
	return { nodes, slotOf, order, places, feeds, readers, declared };
}

/** The slot of an id; a TypeError when there is none. */
export function slotNamed(graph: Graph, id: string): number {
	const slot = graph.slotOf.get(id);
	if (slot === undefined) throw new TypeError(`${id} is no answer and no quantity`);
	return slot;
}

function sort(nodes: readonly Node[], feeds: readonly (readonly number[])[]): number[] {
	const order: number[] = [];
	const state = new Uint8Array(nodes.length);
	const visit = (slot: number, path: readonly string[]): void => {
		if (state[slot] === 2) return;
		const { id } = nodes[slot]!;
		if (state[slot] === 1) throw new TypeError(`a circle: ${[...path, id].join(' reads ')}`);
		state[slot] = 1;
		for (const input of feeds[slot]!) visit(input, [...path, id]);
		state[slot] = 2;
		order.push(slot);
	};
	for (const slot of nodes.keys()) visit(slot, []);
	return order;
}
