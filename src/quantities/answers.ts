import { bind, type Reader } from '../expressions/bind.ts';
import { type Expression, namesIn, type Outcome } from '../expressions/tree.ts';
import type { Question } from '../sheet/question.ts';
import type { Inputs } from './inputs.ts';

/** A flow answered in the other kind (mass for volume, volume for mass), waiting for the density that converts it. */
export class AtDensity {
	readonly flow: readonly (readonly [number, number])[] | number;
	/** What turns it into the question's kind: its product with the density, or its quotient. */
	readonly by: 'times' | 'over';
	constructor(flow: AtDensity['flow'], by: AtDensity['by']) {
		this.flow = flow;
		this.by = by;
	}

	at(density: number): Outcome {
		const factor = this.by === 'times' ? density : 1 / density;
		if (typeof this.flow === 'number') return this.flow * factor;
		return this.flow.map(([pressure, flow]) => [pressure, flow * factor]);
	}
}

/** How an answer's slot gets its value: not in effect, as answered, the usual value, or not known. */
export function answerNode(question: Question): {
	reads: string[];
	compute: (inputs: Inputs, given: Outcome | AtDensity) => Outcome;
} {
	let now: Inputs;
	const reader: Reader = name => () => now.peek(name);
	const inEffect = question.askWhen && bind(question.askWhen, reader);
	const usual = question.usual.map(({ when, value, from }) => ({
		from,
		when: when ? bind(when, reader) : () => true,
		value: bind(value, reader),
	}));
	const density = typeof question.takes?.at === 'string' ? question.takes.at : null;
	const expressions = [question.askWhen, ...question.usual.flatMap(({ when, value }) => [when ?? null, value])];
	const reads = new Set(expressions.filter((e): e is Expression => e !== null).flatMap(e => [...namesIn(e)]));
	if (density) reads.add(density);
	return {
		reads: [...reads],
		compute(inputs, given) {
			now = inputs;
			if (inEffect) {
				const outcome = inEffect();
				if (outcome === false || outcome === null) return null;
			}
			inputs.forget();
			if (given instanceof AtDensity) return given.at(inputs.number(density!));
			if (given !== undefined) return given;
			for (const { when, value, from } of usual) {
				const holds = when();
				if (holds === undefined) return undefined;
				if (holds === true) {
					inputs.assume(from ? `${question.id} (${from})` : question.id);
					return value();
				}
			}
			inputs.forget();
			return undefined;
		},
	};
}
