import type { Expression } from '../../expressions/tree.ts';
import type { Question, UsualCase } from '../../sheet/question.ts';
import { isConstant, readConstant, readSpread } from './constant.ts';
import { compileExpression, compileYesNo } from './expression.ts';
import { type Fields, quote } from './fields.ts';
import type { Names } from './names.ts';

/** The usual values of a question: one, or cases that are tried in order. */
export function readUsual(fields: Fields, question: Question, names: Names): UsualCase[] {
	if (!fields.has('usual')) return [];
	const cases = fields.isList('usual') ? fields.innerList('usual') : [fields.inner('usual')];
	return cases.flatMap(inner => (inner ? readCase(inner, question, names) : []));
}

/** One usual value: also how a pack's prefill is written. */
export function readCase(inner: Fields, question: Question, names: Names, from?: string): UsualCase[] {
	const when = compileYesNo(inner, 'when', names);
	const value = readValue(inner, question, names);
	const spreadAt = inner.placed('spread', false);
	const spread = spreadAt ? readSpread(inner.source, spreadAt, question.of[0] ?? 'count') : { by: 0, relative: false };
	// A prefill also says which answer it is for.
	if (from !== undefined) inner.has('answer');
	inner.refuseRest();
	if (!value) return [];
	return [{ ...(when ? { when } : {}), value, spread, ...(from === undefined ? {} : { from }) }];
}

function readValue(inner: Fields, question: Question, names: Names): Expression | null {
	const placed = inner.placed('value');
	if (!placed) return null;
	if (question.kind === 'choice') {
		if (Object.hasOwn(question.choices, placed.text)) return ['value', placed.text];
		const choices = Object.keys(question.choices).join(', ');
		inner.report('value', `${quote(placed.text)} is not one of the choices ${choices}`);
		return null;
	}
	const kind = question.kind === 'whole' ? 'count' : question.of[0];
	if (!kind || (question.kind !== 'whole' && question.kind !== kind)) {
		inner.report('value', `a usual value makes no sense for ${question.kind}`);
		return null;
	}
	if (isConstant(placed.text)) {
		const constant = readConstant(inner.source, placed, [kind]);
		return constant && ['value', constant.value];
	}
	const compiled = compileExpression(inner.source, placed, names);
	if (!compiled) return null;
	const { type } = compiled;
	if (type.is === 'number' && (type.kind === kind || (kind === 'count' && type.kind === 'ratio'))) return compiled.tree;
	inner.report('value', `value: ${kind === 'count' ? 'a bare number' : `a ${kind}`} is needed here`);
	return null;
}
