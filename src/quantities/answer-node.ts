import { bind, type Reader as NameReader } from '../expressions/bind.ts';
import { type Expression, namesIn, type Outcome } from '../expressions/tree.ts';
import { Incomplete, type Node } from '../graph/graph.ts';
import { Input } from '../graph/input.ts';
import type { Reader } from '../graph/reader.ts';
import type { Question } from '../sheet/question.ts';

/** A flow answered in the other kind (mass for volume, volume for mass), waiting for the density that converts it. */
export class AtDensity extends Incomplete {
	readonly flow: readonly (readonly [number, number])[] | number;
	/** What turns it into the question's kind: its product with the density, or its quotient. */
	readonly by: 'times' | 'over';
	constructor(flow: AtDensity['flow'], by: AtDensity['by']) {
		super();
		this.flow = flow;
		this.by = by;
	}

	override completeWith(density: number): Outcome {
		const factor = this.by === 'times' ? density : 1 / density;
		if (typeof this.flow === 'number') return this.flow * factor;
		return this.flow.map(([pressure, flow]) => [pressure, flow * factor]);
	}
}

/** An answer's node: not in effect, as answered, the usual value, or not known. */
export function answerNode(question: Question): Node {
	let now: Reader;
	const reader: NameReader = name => () => now.peek(name);
	const inEffect = question.askWhen && bind(question.askWhen, reader);
	const usual = question.usual.map(({ when, value, from }) => ({
		from,
		when: when ? bind(when, reader) : () => true,
		value: bind(value, reader),
	}));
	const density = typeof question.takes?.at === 'string' ? question.takes.at : null;
	const expressions = [question.askWhen, ...question.usual.flatMap(({ when, value }) => [when ?? null, value])];
	const dependencies = new Set(expressions.filter((e): e is Expression => e !== null).flatMap(e => [...namesIn(e)]));
	if (density) dependencies.add(density);
	return new Input({
		id: question.id,
		dependencies: [...dependencies],
		resolve(inputs, given) {
			now = inputs;
			if (inEffect) {
				const outcome = inEffect();
				if (outcome === false || outcome === null) return null;
			}
			inputs.forget();
			if (given instanceof Incomplete) return given.completeWith(inputs.number(density!));
			if (given !== undefined) return given;
			for (let place = 0; place < usual.length; place++) {
				const { when, value, from } = usual[place]!;
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
	});
}
