import type { Outcome } from '../expressions/tree.ts';
import { branch, restore, run, valuesAt } from './evaluation.ts';
import { type Evaluation, type Graph, type Node, slotNamed, type Trace } from './graph.ts';
import { affecting, between } from './paths.ts';
import { union } from './trace.ts';

interface Plan {
	readonly graph: Graph;
	readonly of: number;
	/** Slots that are set, and the slots their values are taken from. */
	readonly set: readonly number[];
	readonly from: readonly number[];
	readonly order: readonly number[];
}

/** A node as it would be with some inputs set to the values of other nodes. */
export class WhatIf implements Node {
	readonly id: string;
	readonly dependencies: readonly string[];
	readonly expensive = false;
	private readonly of: string;
	private readonly set: Readonly<Record<string, string>>;
	private known: Plan | null = null;

	/** `set`: the id of each input that is set, to the id that its value is taken from. */
	constructor(id: string, of: string, set: Readonly<Record<string, string>>) {
		this.id = id;
		this.of = of;
		this.set = set;
		this.dependencies = [of, ...Object.keys(set), ...Object.values(set)];
	}

	evaluate(at: Evaluation): Outcome {
		const { values } = at;
		const { of, set, from, order } = this.plan(at.graph);
		for (let index = 0; index < from.length; index++) {
			const value = values[from[index]!];
			if (value === undefined || value === null) return value;
		}
		const held = valuesAt(values, set);
		const saved = valuesAt(values, order);
		for (let index = 0; index < set.length; index++) values[set[index]!] = values[from[index]!];
		run(at, order);
		const outcome = values[of];
		restore(values, set, held);
		restore(values, order, saved);
		return outcome;
	}

	trace(at: Evaluation, slot: number, trace: Trace): Outcome {
		const { values, graph } = at;
		const { of, set, from, order } = this.plan(graph);
		if (from.some(source => values[source] === null)) return null;
		trace.missing[slot] = union(from.map(source => trace.missing[source]!));
		if (trace.missing[slot]!.length > 0) return undefined;
		const there = branch(at, trace, new Map(set.map((input, index) => [input, values[from[index]!]])), order);
		trace.missing[slot] = there.missing[of]!;
		trace.assumed[slot] = union([there.assumed[of]!, ...from.map(source => trace.assumed[source]!)]);
		const broken = there.broken.get(of);
		if (broken !== undefined) trace.broken.set(slot, broken);
		return there.values[of];
	}

	affectedBy(graph: Graph): readonly number[] {
		const { of, set, from } = this.plan(graph);
		return [...affecting(graph, set, [of]), ...from];
	}

	/** It sets those itself. */
	ignores(varied: readonly string[]): boolean {
		return varied.every(id => id in this.set);
	}

	private plan(graph: Graph): Plan {
		if (this.known?.graph === graph) return this.known;
		const of = slotNamed(graph, this.of);
		const set = Object.keys(this.set).map(id => slotNamed(graph, id));
		const from = Object.values(this.set).map(id => slotNamed(graph, id));
		this.known = { graph, of, set, from, order: between(graph, set, [of]) };
		return this.known;
	}
}
