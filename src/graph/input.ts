import type { Outcome } from '../expressions/tree.ts';
import type { Bounded } from './bounded.ts';
import { compute } from './compute.ts';
import type { Evaluation, Given, Graph, Node, Trace } from './graph.ts';
import type { Reader } from './reader.ts';
import { note } from './trace.ts';

/** How an input gets its value from what it is given, which may be nothing: not in effect, as given, a usual value, not known. */
export interface InputDefinition {
	readonly id: string;
	readonly dependencies: readonly string[];
	readonly resolve: (reader: Reader, given: Given['value']) => Outcome;
}

export class Input implements Node {
	readonly id: string;
	readonly dependencies: readonly string[];
	readonly expensive = false;
	private readonly resolve: InputDefinition['resolve'];

	constructor({ id, dependencies, resolve }: InputDefinition) {
		this.id = id;
		this.dependencies = dependencies;
		this.resolve = resolve;
	}

	evaluate(at: Evaluation, slot: number): Outcome | Bounded {
		const given = at.given.get(slot)?.value;
		return compute(at, slot, reader => this.resolve(reader, given));
	}

	trace(at: Evaluation, slot: number, trace: Trace): Outcome | Bounded {
		const outcome = this.evaluate(at, slot);
		const { assumes } = at.reader;
		const given = at.given.get(slot);
		note(at, slot, outcome, trace, given ? given.assumed : assumes === null ? [] : [assumes], this.id);
		return outcome;
	}

	affectedBy(graph: Graph, slot: number): readonly number[] {
		return graph.feeds[slot]!;
	}
}
