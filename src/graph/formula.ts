import type { Outcome } from '../expressions/tree.ts';
import type { Bounded } from './bounded.ts';
import { compute } from './compute.ts';
import type { Evaluation, Graph, Node, Trace } from './graph.ts';
import type { Reads } from './reader.ts';
import { note } from './trace.ts';

/** A pure function of other nodes. */
export interface FormulaDefinition {
	readonly id: string;
	readonly dependencies: readonly string[];
	readonly expensive: boolean;
	/** What is taken for granted wherever this is used. */
	readonly assumes: readonly string[];
	readonly formula: (reads: Reads) => Outcome | Bounded;
}

export class Formula implements Node {
	readonly id: string;
	readonly dependencies: readonly string[];
	readonly expensive: boolean;
	private readonly assumes: readonly string[];
	private readonly formula: FormulaDefinition['formula'];

	constructor({ id, dependencies, expensive, assumes, formula }: FormulaDefinition) {
		this.id = id;
		this.dependencies = dependencies;
		this.expensive = expensive;
		this.assumes = assumes;
		this.formula = formula;
	}

	evaluate(at: Evaluation, slot: number): Outcome | Bounded {
		return compute(at, slot, this.formula);
	}

	trace(at: Evaluation, slot: number, trace: Trace): Outcome | Bounded {
		const outcome = this.evaluate(at, slot);
		const { assumes } = at.reader;
		note(at, slot, outcome, trace, assumes === null ? this.assumes : [assumes]);
		return outcome;
	}

	affectedBy(graph: Graph, slot: number): readonly number[] {
		return graph.feeds[slot]!;
	}
}
