import type { Outcome } from '../expressions/tree.ts';
import { OutOfRange } from '../physics/range.ts';
import { tellElsewhere } from './elsewhere.ts';
import type { Given, Graph, Node } from './graph.ts';
import { Inputs, type Values } from './inputs.ts';
import { tellLimit } from './limit.ts';
import { Bounded } from './quantity.ts';
import { reach, slotNamed } from './replace.ts';
import { settle } from './run.ts';

/** An answer on its way into the graph, with the ids of whatever its reading took for granted (a density, a sensitivity). */
export interface GivenAnswer {
	readonly value: Given;
	readonly assumed: readonly string[];
}

/** What the graph came to: the value of each slot, and for each why it is not known or what it takes for granted. */
export interface State {
	readonly graph: Graph;
	readonly values: Values;
	readonly given: ReadonlyMap<number, GivenAnswer>;
	/** Slots whose value was set from outside, as a rule's example does. */
	readonly replaced: ReadonlySet<number>;
	readonly missing: readonly (readonly string[])[];
	readonly assumed: readonly (readonly string[])[];
	readonly bounds: ReadonlyMap<number, 'above' | 'below'>;
	/** Slots whose formula refused its inputs or gave no finite number, with what it said. */
	readonly broken: ReadonlyMap<number, string>;
}

/** A pass that is being made. */
export interface Telling {
	readonly graph: Graph;
	readonly values: Values;
	readonly given: ReadonlyMap<number, GivenAnswer>;
	readonly missing: (readonly string[])[];
	readonly assumed: (readonly string[])[];
	readonly bounds: Map<number, 'above' | 'below'>;
	readonly broken: Map<number, string>;
}

const nothing: readonly string[] = [];

/** How the reason begins when not the inputs are to blame. */
export const programFault = 'a fault in swap-audit';

/**
 * Computes every slot once, keeping what is missing and what is assumed.
 * `replaced` sets slots outright (by id), whatever would go into them.
 * With `targets` only those and what they are made from are computed; the rest stays not known.
 */
export function solve(
	graph: Graph,
	answers: ReadonlyMap<string, GivenAnswer>,
	replaced: ReadonlyMap<string, Outcome> = new Map(),
	targets?: readonly string[],
): State {
	const telling = begin(graph, answers);
	const fixed = new Set<number>();
	for (const [id, value] of replaced) {
		const slot = slotNamed(graph, id);
		fixed.add(slot);
		telling.values[slot] = value;
	}
	const wanted = targets?.map(id => slotNamed(graph, id));
	tell(telling, wanted ? leadingTo(graph, wanted) : graph.order, fixed);
	return { ...telling, replaced: fixed };
}

/** A pass in which nothing is computed yet. */
export function begin(graph: Graph, answers: ReadonlyMap<string, GivenAnswer>): Telling {
	const given = new Map<number, GivenAnswer>();
	for (const [id, answer] of answers) given.set(slotNamed(graph, id), answer);
	const { length } = graph.nodes;
	return {
		graph,
		values: new Array<Outcome>(length).fill(undefined),
		given,
		missing: new Array<readonly string[]>(length).fill(nothing),
		assumed: new Array<readonly string[]>(length).fill(nothing),
		bounds: new Map(),
		broken: new Map(),
	};
}

/** Some slots and all they are made from, in order. */
function leadingTo(graph: Graph, targets: readonly number[]): number[] {
	const needed = reach(targets, slot => graph.feeds[slot]!);
	return graph.order.filter(slot => needed.has(slot));
}

/** Computes the slots named, in order, keeping what is missing and assumed. */
export function tell(telling: Telling, order: readonly number[], fixed: ReadonlySet<number>): void {
	const inputs = new Inputs(telling.graph.slotOf, telling.values, true);
	for (const slot of order) if (!fixed.has(slot)) tellSlot(telling, slot, inputs);
}

/** Computes one slot, all that goes into it being there. `inputs` looks at the same values and is telling. */
export function tellSlot(telling: Telling, slot: number, inputs: Inputs): void {
	const node = telling.graph.nodes[slot]!;
	try {
		if (node.limit) tellLimit(telling, node, inputs);
		else if (node.elsewhere) tellElsewhere(telling, node);
		else tellNode(telling, node, inputs);
	} catch (error) {
		// A formula with a fault in it costs its own figure and what is made from it; the rest of the audit stands.
		telling.values[slot] = undefined;
		telling.missing[slot] = nothing;
		telling.broken.set(slot, `${programFault}: ${(error as Error).message}`);
	}
}

/** A copy of a pass with some slots set, the slots in `order` computed anew. The set slots count as known outright. */
export function tellReplaced(telling: Telling, set: ReadonlyMap<number, Outcome>, order: readonly number[]): Telling {
	const at: Telling = {
		...telling,
		values: telling.values.slice(),
		missing: telling.missing.slice(),
		assumed: telling.assumed.slice(),
		bounds: new Map(telling.bounds),
		broken: new Map(telling.broken),
	};
	for (const slot of order) {
		at.broken.delete(slot);
		at.bounds.delete(slot);
		at.missing[slot] = nothing;
		at.assumed[slot] = nothing;
	}
	for (const [slot, value] of set) {
		at.values[slot] = value;
		at.missing[slot] = nothing;
		at.assumed[slot] = nothing;
		at.broken.delete(slot);
	}
	tell(at, order, new Set(set.keys()));
	return at;
}

function tellNode(telling: Telling, node: Node, inputs: Inputs): void {
	const { values, given } = telling;
	const answer = given.get(node.slot);
	inputs.enter(node.slots);
	let outcome: Outcome | Bounded;
	try {
		outcome = settle(node.compute!(inputs, answer?.value), inputs);
	} catch (error) {
		if (!(error instanceof OutOfRange)) throw error;
		// A formula refuses the NaN that stands for something missing: that is not its fault.
		if (inputs.lacks || inputs.idle) outcome = settle(Number.NaN, inputs);
		else {
			telling.broken.set(node.slot, error.message);
			outcome = undefined;
		}
	}
	if (outcome instanceof Bounded) {
		telling.bounds.set(node.slot, outcome.bound);
		outcome = outcome.value;
	}
	if (typeof outcome === 'number' && !Number.isFinite(outcome)) {
		telling.broken.set(node.slot, `it came to ${outcome}`);
		outcome = undefined;
	}
	values[node.slot] = outcome;
	keep(telling, node, inputs, outcome);
}

function keep(telling: Telling, node: Node, inputs: Inputs, outcome: Outcome): void {
	const { missing, assumed, broken, values } = telling;
	const reads = inputs.reads!;
	if (outcome === undefined && !broken.has(node.slot)) {
		const lost = reads.find(slot => broken.has(slot));
		if (lost !== undefined) broken.set(node.slot, `${telling.graph.nodes[lost]!.id}: ${broken.get(lost)}`);
		const lacking = union(reads.filter(slot => values[slot] === undefined).map(slot => missing[slot]!)).concat(
			inputs.wants,
		);
		const own = node.question && lacking.length === 0 ? [node.id] : lacking;
		missing[node.slot] = lost === undefined ? [...new Set(own)].sort() : nothing;
	}
	if (outcome !== undefined && outcome !== null) assumed[node.slot] = assumedBy(telling, node, reads, inputs.assumes);
}

function assumedBy(telling: Telling, node: Node, reads: readonly number[], usual: string | null): readonly string[] {
	const lists = reads.map(slot => telling.assumed[slot]!);
	const answer = telling.given.get(node.slot);
	if (answer) return union([...lists, answer.assumed]);
	const own = usual ?? node.assumes;
	return union(own === null ? lists : [...lists, [own]]);
}

/** Several sorted lists as one sorted list without doubles. */
export function union(lists: readonly (readonly string[])[]): readonly string[] {
	// What hangs together often shares one list.
	let only = nothing;
	for (const list of lists) {
		if (list.length === 0 || list === only) continue;
		if (only !== nothing) return [...new Set(lists.flat())].sort();
		only = list;
	}
	return only;
}
