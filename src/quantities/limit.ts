import type { Outcome } from '../expressions/tree.ts';
import { runsOut, type Spare } from '../physics/solve.ts';
import type { Graph, Node } from './graph.ts';
import { Inputs, type Values } from './inputs.ts';
import { type GivenAnswer, type Telling, tellReplaced, union } from './pass.ts';
import { Bounded, type Limit, type LimitQuantity } from './quantity.ts';
import { between, slotNamed } from './replace.ts';
import { run } from './run.ts';

/** Finds a limit on the values at hand. */
export function solveLimit(
	graph: Graph,
	values: Values,
	given: ReadonlyMap<number, GivenAnswer>,
	node: Node,
): Outcome | Bounded {
	const here = applies(node, new Inputs(graph.slotOf, values));
	if (here !== true) return here;
	const limit = node.limit!;
	// Where it was before is close to where it is now.
	const before = values[node.slot];
	const found = spared(graph, values, given, node, spare =>
		runsOut(spare, limit.from, farthest(graph, values, limit), typeof before === 'number' ? before : undefined),
	);
	if (found === undefined) return undefined;
	return found.bound ? new Bounded(found.value, found.bound) : found.value;
}

/** Where a limit stops being looked for, on the values at hand. */
export function farthest(graph: Graph, values: Values, { to, end }: Limit): number {
	const nearer = end === undefined ? undefined : values[slotNamed(graph, end)];
	return typeof nearer === 'number' ? Math.min(to, nearer) : to;
}

/** Hands `use` what a limit has to spare at any value of what it varies; the values are as before when it is done. */
export function spared<T>(
	graph: Graph,
	values: Values,
	given: ReadonlyMap<number, GivenAnswer>,
	node: Node,
	use: (spare: Spare) => T,
): T {
	const { rising } = node.limit!;
	const { vary, until, reaches, order } = parts(graph, node);
	const kept = order.map(slot => values[slot]);
	const held = values[vary];
	try {
		return use(x => {
			values[vary] = x;
			run(graph, values, given, order);
			const at = values[until];
			const end = typeof reaches === 'number' ? reaches : values[reaches.slot];
			if (typeof at !== 'number' || typeof end !== 'number') return undefined;
			return rising ? end - at : at - end;
		});
	} finally {
		values[vary] = held;
		for (let index = 0; index < order.length; index++) values[order[index]!] = kept[index];
	}
}

/** The same, keeping what is missing or assumed: told with the varied answer taken as known, because it is. */
export function tellLimit(telling: Telling, node: Node, inputs: Inputs): void {
	const { graph, values, given } = telling;
	const here = applies(node, inputs);
	const reads = [...new Set(inputs.reads)];
	values[node.slot] = here === null || here === false ? null : undefined;
	if (here === undefined) telling.missing[node.slot] = union(reads.map(slot => telling.missing[slot]!));
	if (here !== true) return;
	const { vary, until, reaches, order } = parts(graph, node);
	const at = tellReplaced(telling, new Map([[vary, node.limit!.from]]), order);
	const ends = typeof reaches === 'number' ? [until] : [until, reaches.slot];
	const broken = ends.find(slot => at.broken.has(slot));
	if (broken !== undefined) {
		telling.broken.set(node.slot, `${graph.nodes[broken]!.id}: ${at.broken.get(broken)}`);
		return;
	}
	telling.missing[node.slot] = union(ends.map(slot => at.missing[slot]!));
	if (telling.missing[node.slot]!.length > 0) return;
	if (ends.some(slot => at.values[slot] === null)) {
		values[node.slot] = null;
		return;
	}
	const found = solveLimit(graph, values, given, node);
	if (found instanceof Bounded) telling.bounds.set(node.slot, found.bound);
	values[node.slot] = found instanceof Bounded ? found.value : found;
	telling.assumed[node.slot] = union([...ends, ...reads].map(slot => at.assumed[slot]!));
}

function applies(node: Node, inputs: Inputs): boolean | undefined | null {
	inputs.enter(node.slots);
	const { when } = node.quantity as LimitQuantity;
	const here = when ? when(inputs) : true;
	if (here !== undefined) return here;
	return inputs.idle && !inputs.lacks ? null : undefined;
}

interface Parts {
	readonly vary: number;
	readonly until: number;
	readonly reaches: number | { readonly slot: number };
	readonly order: readonly number[];
}

const plans = new WeakMap<Node, Parts>();

function parts(graph: Graph, node: Node): Parts {
	const known = plans.get(node);
	if (known) return known;
	const limit = node.limit!;
	const vary = slotNamed(graph, limit.vary);
	const until = slotNamed(graph, limit.until);
	const reaches = typeof limit.reaches === 'number' ? limit.reaches : { slot: slotNamed(graph, limit.reaches) };
	const ends = typeof reaches === 'number' ? [until] : [until, reaches.slot];
	const found = { vary, until, reaches, order: between(graph, [vary], ends) };
	plans.set(node, found);
	return found;
}
