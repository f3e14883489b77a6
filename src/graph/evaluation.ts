import type { Outcome } from '../expressions/tree.ts';
import { Bounded } from './bounded.ts';
import type { Evaluation, Given, Graph, Strays, Trace, Values } from './graph.ts';
import { Reader } from './reader.ts';
import { clear, copyOf } from './trace.ts';

/** What an evaluation starts from: a solved graph, or a draw of one. */
export interface Base {
	readonly graph: Graph;
	readonly values: Values;
	readonly given: ReadonlyMap<number, Given>;
	readonly strays?: Strays | null;
}

/** How the reason begins when not the inputs are to blame. */
export const programFault = 'a fault in swap-audit';

/** An evaluation on these values; they are written to. */
export function evaluationOn({ graph, values, given, strays = null }: Base, trace: Trace | null = null): Evaluation {
	return { graph, values, given, reader: new Reader(graph.slotOf, values, trace !== null), trace, strays };
}

// By index, here and where draws run: a list iterator takes the optimizing compiler longer than an audit ever gets back.

/** Evaluates the slots named, in order. */
export function run(at: Evaluation, order: readonly number[]): void {
	for (let place = 0; place < order.length; place++) at.values[order[place]!] = valueAt(at, order[place]!);
}

/** The values of some slots, to be put back by `restore`. */
export function valuesAt(values: Values, slots: readonly number[]): Outcome[] {
	const saved = new Array<Outcome>(slots.length);
	for (let place = 0; place < slots.length; place++) saved[place] = values[slots[place]!];
	return saved;
}

/** Puts values back as `valuesAt` found them. */
export function restore(values: Values, slots: readonly number[], saved: readonly Outcome[]): void {
	for (let place = 0; place < slots.length; place++) values[slots[place]!] = saved[place];
}

/** The value of one slot, all that goes into it being there. What breaks costs its own figure; the rest stands. */
export function valueAt(at: Evaluation, slot: number): Outcome {
	const { trace } = at;
	const node = at.graph.nodes[slot]!;
	try {
		const outcome = trace ? node.trace(at, slot, trace) : node.evaluate(at, slot);
		if (!(outcome instanceof Bounded)) return strayed(at, slot, outcome);
		trace?.bounds.set(slot, outcome.bound);
		return outcome.value;
	} catch (error) {
		if (trace) {
			clear(trace, slot);
			trace.broken.set(slot, `${programFault}: ${(error as Error).message}`);
		}
		return undefined;
	}
}

function strayed({ strays }: Evaluation, slot: number, value: Outcome): Outcome {
	if (strays === null) return value;
	const stray = strays.get(slot);
	return stray && value !== undefined && value !== null ? stray(value) : value;
}

/** The same values with some slots set, those in `order` evaluated anew, traced. The set slots count as known outright. */
export function branch(
	at: Evaluation,
	trace: Trace,
	set: ReadonlyMap<number, Outcome>,
	order: readonly number[],
): Trace & { readonly values: Values } {
	const values = at.values.slice();
	const own = copyOf(trace);
	for (const slot of order) clear(own, slot);
	for (const [slot, value] of set) {
		values[slot] = value;
		clear(own, slot);
	}
	run(
		evaluationOn({ ...at, values }, own),
		order.filter(slot => !set.has(slot)),
	);
	return { ...own, values };
}

/** The same values without a trace. */
export const untraced = (at: Evaluation): Evaluation => (at.trace ? evaluationOn(at) : at);
