import type { Outcome } from '../expressions/tree.ts';
import type { Evaluation, Node, Trace } from './graph.ts';

/** A usual value that nobody is asked for. */
export class Constant implements Node {
	readonly id: string;
	readonly dependencies = [];
	readonly expensive = false;
	private readonly value: number;
	private readonly assumes: readonly string[];

	/** `assumes`: the id that is named wherever the value is used. */
	constructor(id: string, value: number, assumes: string) {
		this.id = id;
		this.value = value;
		this.assumes = [assumes];
	}

	evaluate(): Outcome {
		return this.value;
	}

	trace(_at: Evaluation, slot: number, trace: Trace): Outcome {
		trace.assumed[slot] = this.assumes;
		return this.value;
	}

	affectedBy(): readonly number[] {
		return [];
	}
}
