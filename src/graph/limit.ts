import type { Outcome } from '../expressions/tree.ts';
import { fromKnown, type Known, runsOut, type Spare } from '../physics/solve.ts';
import { Bounded } from './bounded.ts';
import { branch, restore, run, untraced, valuesAt } from './evaluation.ts';
import { type Evaluation, type Graph, type Node, slotNamed, type Trace } from './graph.ts';
import { affecting, between } from './paths.ts';
import type { Reads } from './reader.ts';
import { union } from './trace.ts';

/** The value of `vary` at which `until` reaches `reaches`. */
export interface LimitDefinition {
	readonly vary: string;
	readonly until: string;
	readonly reaches: string | number;
	/** True when `until` grows towards the limit, false when it falls towards it. */
	readonly rising: boolean;
	readonly from: number;
	readonly to: number;
	/** A node beyond which there is nothing to look for, where it is less than `to`. */
	readonly end?: string | undefined;
}

type When = (reads: Reads) => boolean | undefined | null;

interface Plan {
	readonly graph: Graph;
	readonly vary: number;
	readonly until: number;
	readonly reaches: number | { readonly slot: number };
	readonly ends: readonly number[];
	readonly end: number | null;
	readonly order: readonly number[];
}

/** A node that is found by moving another one. */
export class LimitNode implements Node {
	readonly id: string;
	readonly dependencies: readonly string[];
	readonly expensive: boolean;
	readonly limit: LimitDefinition;
	/** Says where the limit applies; reads only `inputs`. */
	private readonly when: When | undefined;
	private readonly inputs: readonly string[];
	private known: Plan | null = null;

	constructor(
		id: string,
		{ vary, until, reaches, rising, from, to, end }: LimitDefinition,
		inputs: readonly string[],
		when: When | undefined,
		expensive: boolean,
	) {
		this.id = id;
		// All of one shape: what looks for limits runs often.
		this.limit = { vary, until, reaches, rising, from, to, end };
		this.inputs = inputs;
		this.when = when;
		this.expensive = expensive;
		this.dependencies = [...inputs, vary, until, ...[reaches, end].filter(other => typeof other === 'string')];
	}

	evaluate(at: Evaluation, slot: number): Outcome | Bounded {
		const here = this.applies(at, slot);
		if (!here) return here;
		// What does not apply here has no limit: the same as when it is traced.
		if (this.plan(at.graph).ends.some(end => at.values[end] === null)) return null;
		return this.solve(at, slot);
	}

	trace(at: Evaluation, slot: number, trace: Trace): Outcome | Bounded {
		const here = this.applies(at, slot);
		const reads = [...new Set(at.reader.reads)];
		if (here === undefined) trace.missing[slot] = union(reads.map(read => trace.missing[read]!));
		if (!here) return here;
		// What is missing is found with the varied input taken as known, because it is.
		const { vary, ends, order } = this.plan(at.graph);
		const there = branch(at, trace, new Map([[vary, this.limit.from]]), order);
		const broken = ends.find(end => there.broken.has(end));
		if (broken !== undefined) {
			trace.broken.set(slot, `${at.graph.nodes[broken]!.id}: ${there.broken.get(broken)}`);
			return undefined;
		}
		trace.missing[slot] = union(ends.map(end => there.missing[end]!));
		if (trace.missing[slot]!.length > 0) return undefined;
		if (ends.some(end => there.values[end] === null)) return null;
		trace.assumed[slot] = union([...ends, ...reads].map(read => there.assumed[read]!));
		at.values[slot] = undefined;
		return this.solve(untraced(at), slot);
	}

	/** What goes into the nodes that it works out anew. One that is expensive stays: each trial would take dozens of runs. */
	affectedBy(graph: Graph): readonly number[] {
		if (this.expensive) return [];
		const { vary, ends, end } = this.plan(graph);
		const own = this.inputs.map(id => slotNamed(graph, id));
		return [...affecting(graph, [vary], ends), ...own, ...(end === null ? [] : [end])];
	}

	/** Where the limit stops being looked for, on the values at hand. */
	farthest({ graph, values }: Evaluation): number {
		const { end } = this.plan(graph);
		const nearer = end === null ? undefined : values[end];
		return typeof nearer === 'number' ? Math.min(this.limit.to, nearer) : this.limit.to;
	}

	/** What there is to spare on the values at hand; null where that is not known. */
	here({ graph, values }: Evaluation): Known | null {
		const { vary, until, reaches } = this.plan(graph);
		const at = values[vary];
		const spare = this.spareOf(values[until], typeof reaches === 'number' ? reaches : values[reaches.slot]);
		return typeof at === 'number' && spare !== undefined ? { at, spare } : null;
	}

	private spareOf(value: Outcome, end: Outcome): number | undefined {
		if (typeof value !== 'number' || typeof end !== 'number') return undefined;
		return this.limit.rising ? end - value : value - end;
	}

	/** Hands `use` what there is to spare at any value of what is varied; the values are as before when it is done. */
	withSpare<T>(at: Evaluation, use: (spare: Spare) => T): T {
		const { values } = at;
		const { vary, until, reaches, order } = this.plan(at.graph);
		const saved = valuesAt(values, order);
		const held = values[vary];
		try {
			return use(x => {
				values[vary] = x;
				run(at, order);
				return this.spareOf(values[until], typeof reaches === 'number' ? reaches : values[reaches.slot]);
			});
		} finally {
			values[vary] = held;
			restore(values, order, saved);
		}
	}

	private solve(at: Evaluation, slot: number): Outcome | Bounded {
		// Where it was before is close to where it is now.
		const before = at.values[slot];
		const guess = typeof before === 'number' ? before : undefined;
		const { from } = this.limit;
		const to = this.farthest(at);
		// Each place that is looked at takes up to three cycles of the cylinder: what is known already saves a third of them.
		const here = this.expensive && guess === undefined ? this.here(at) : null;
		const found = this.withSpare(at, spare => {
			const near = here ? fromKnown(spare, from, to, here) : undefined;
			return near === undefined ? runsOut(spare, from, to, guess) : { value: near, bound: null };
		});
		if (found === undefined) return undefined;
		return found.bound ? new Bounded(found.value, found.bound) : found.value;
	}

	/** True where it applies; null: not here; undefined: not known. */
	private applies({ graph, reader }: Evaluation, slot: number): true | undefined | null {
		reader.enter(graph.declared[slot]!);
		const here = this.when ? this.when(reader) : true;
		if (here === undefined) return reader.inapplicable && !reader.lacks ? null : undefined;
		return here || null;
	}

	private plan(graph: Graph): Plan {
		if (this.known?.graph === graph) return this.known;
		const { vary, until, reaches, end } = this.limit;
		const varied = slotNamed(graph, vary);
		const watched = slotNamed(graph, until);
		const reached = typeof reaches === 'number' ? reaches : { slot: slotNamed(graph, reaches) };
		const ends = typeof reached === 'number' ? [watched] : [watched, reached.slot];
		this.known = {
			graph,
			vary: varied,
			until: watched,
			reaches: reached,
			ends,
			end: end === undefined ? null : slotNamed(graph, end),
			order: between(graph, [varied], ends),
		};
		return this.known;
	}
}
