import type { Model } from '../audit/model.ts';
import { bind } from '../expressions/bind.ts';
import { type Expression, namesIn, type Outcome } from '../expressions/tree.ts';
import type { Rule } from '../rulebook/rulebook.ts';
import { answerTo, type Sheet } from '../sheet/sheet.ts';
import { formatAnswer } from '../wording/format.ts';
import type { State } from './state.ts';

/** The rules by which two answers of a sheet cannot both be so. */
function contradictions({ rulebook }: Model, sheet: Sheet): Rule[] {
	const is = (expression: Expression) =>
		bind(expression, name => () => answerTo(sheet, name)?.value as Outcome | undefined)();
	return rulebook.rules.filter(
		({ contradiction, applies, holds }) =>
			contradiction && (applies === null || is(applies) === true) && is(holds) === false,
	);
}

/** What an answer contradicts that did not contradict before, in words; null where nothing. */
export function contradicted({ model, sheet: before }: State, id: string, sheet: Sheet): string | null {
	const old = new Set(contradictions(model, before));
	const fresh = contradictions(model, sheet).find(rule => !old.has(rule));
	if (!fresh) return null;
	const names = new Set([fresh.holds, ...(fresh.applies ? [fresh.applies] : [])].flatMap(tree => [...namesIn(tree)]));
	const others = model.rulebook.questions.flatMap(question => {
		const answer = names.has(question.id) && question.id !== id ? answerTo(sheet, question.id) : undefined;
		return answer?.value === undefined ? [] : [`${question.label}: ${formatAnswer(question, answer, sheet.units)}`];
	});
	return `That contradicts what stands: ${others.join('; ')}.`;
}
