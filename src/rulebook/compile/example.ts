import type { Value } from '../../expressions/tree.ts';
import type { AnyQuantity } from '../../quantities/quantity.ts';
import type { Question } from '../../sheet/question.ts';
import type { Example, VerdictWord } from '../rulebook.ts';
import { readConstant } from './constant.ts';
import { type Fields, quote } from './fields.ts';

/** What an example may set. */
export interface ExampleNames {
	readonly questions: ReadonlyMap<string, Question>;
	readonly quantities: ReadonlyMap<string, AnyQuantity>;
	readonly builds: ReadonlySet<string>;
}

const verdicts: readonly VerdictWord[] = ['fails', 'holds', 'cannot-tell', 'does-not-apply'];

/** Reads the examples of a rule. */
export function readExamples(fields: Fields, known: ExampleNames): Example[] {
	return fields.innerList('examples').map(inner => {
		const given = inner.inner('given', false);
		const answers: Record<string, unknown> = {};
		const quantities: Record<string, Value> = {};
		for (const id of given?.keys() ?? []) {
			const question = known.questions.get(id);
			const quantity = known.quantities.get(id);
			if (question) answers[id] = readAnswer(given!, id, question);
			else if (quantity) setQuantity(given!, id, quantity, quantities);
			else given!.report(id, `${quote(id)} is no answer and no quantity`);
		}
		const without = inner.texts('without', false);
		for (const id of without) if (!known.questions.has(id)) inner.report('without', `${quote(id)} is no answer`);
		const on = inner.text('on');
		if (!known.builds.has(on))
			inner.report('on', `${quote(on)} is no build of rules/examples: ${[...known.builds].join(', ')}`);
		const example: Example = {
			on,
			answers,
			quantities,
			without,
			item: inner.has('item') ? inner.text('item') : null,
			then: inner.oneOf('then', verdicts, 'holds'),
			missing: inner.has('missing') ? inner.texts('missing').sort() : null,
			at: inner.source.place(inner.offset),
		};
		inner.refuseRest();
		return example;
	});
}

/** An answer as written in an example or a named build, in the sheet's own shape. */
export function readAnswer(fields: Fields, key: string, question: Question): unknown {
	const data = fields.data(key);
	if (data !== null && typeof data === 'object' && !Array.isArray(data)) return { known: 'measured', ...data };
	if (question.of.length === 1 && question.kind === question.of[0]) {
		const placed = fields.placed(key);
		const kinds = [question.of[0]!, ...(question.takes ? [question.takes.kind] : [])];
		const constant = placed && readConstant(fields.source, placed, kinds);
		if (!constant) return { known: 'not-known' };
		return { value: constant.typed, unit: constant.unit.symbol, known: 'measured' };
	}
	return { value: data };
}

function setQuantity(fields: Fields, id: string, { kind }: AnyQuantity, into: Record<string, Value>): void {
	if (kind === 'yes-no' || kind === 'list' || kind === 'words' || kind === 'hidden') {
		into[id] = fields.data(id) as Value;
		return;
	}
	const placed = fields.placed(id);
	const constant = placed && readConstant(fields.source, placed, [kind]);
	if (constant) into[id] = constant.value;
}
