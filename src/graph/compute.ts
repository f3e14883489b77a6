import type { Outcome } from '../expressions/tree.ts';
import { OutOfRange } from '../physics/range.ts';
import { Bounded } from './bounded.ts';
import type { Evaluation } from './graph.ts';
import type { Reader } from './reader.ts';

/**
 * The outcome of a function of what a node reads. What was made of something not known is not known; NaN or a refusal that
 * comes of something that does not apply here does not apply either. `reader.refusal` says what else went wrong.
 */
export function compute(
	{ graph, reader }: Evaluation,
	slot: number,
	formula: (reader: Reader) => Outcome | Bounded,
): Outcome | Bounded {
	reader.enter(graph.declared[slot]!);
	let outcome: Outcome | Bounded;
	try {
		outcome = formula(reader);
	} catch (error) {
		if (!(error instanceof OutOfRange)) throw error;
		if (reader.inapplicable) return null;
		if (!reader.lacks) reader.refusal = error.message;
		return undefined;
	}
	if (typeof outcome === 'number' && Number.isNaN(outcome) && reader.inapplicable) return null;
	if (outcome === null) return null;
	if (reader.lacks) return undefined;
	if (reader.inapplicable) return null;
	const figure = outcome instanceof Bounded ? outcome.value : outcome;
	if (typeof figure === 'number' && !Number.isFinite(figure)) {
		reader.refusal = `it came to ${figure}`;
		return undefined;
	}
	return outcome;
}
