import type { Assessment } from '../../audit/assess.ts';
import type { QuantityValue } from '../../audit/audit.ts';
import { valueIn } from '../../audit/conditions.ts';
import { quantityInputs } from '../../audit/quantity-values.ts';
import { showAnswer, unitFor } from '../../audit/show.ts';
import type { Outcome } from '../../expressions/tree.ts';
import type { AnyQuantity } from '../../quantities/quantity.ts';
import { slotNamed } from '../../quantities/replace.ts';
import { answerTo } from '../../sheet/sheet.ts';
import { partnerOf } from '../../units/names.ts';
import { write } from '../../units/write.ts';
import { type Block, code, heading, type Inline, listed, paragraph, strong } from '../document.ts';
import { figures } from '../pictures/figures.ts';
import { assumedWords } from './list.ts';
import { span } from './names.ts';

/** Every quantity by name: value, band, formula, inputs, what was assumed, source; then those without a value, and why. */
export function numbers(assessment: Assessment): Block[] {
	const { model, audit, state } = assessment;
	const all = model.quantities
		.filter(({ id }) => Object.hasOwn(audit.quantities, id))
		.sort((a, b) => (a.id < b.id ? -1 : 1))
		.map(quantity => ({ quantity, told: audit.quantities[quantity.id]! }));
	const known = all.filter(({ told }) => told.value !== null);
	const open = all.filter(({ told }) => told.value === null && told.missing.length > 0);
	const bare = all.filter(({ told }) => told.value === null && told.missing.length === 0);
	const slot = (id: string) => slotNamed(state.graph, id);
	const idle = bare.filter(({ quantity: { id } }) => state.values[slot(id)] === null);
	const broken = bare.filter(({ quantity: { id } }) => state.values[slot(id)] === undefined);
	return [
		heading(2, 'The numbers'),
		...figures(assessment, ['air-meter', 'compression']),
		...listed(
			[],
			known.map(({ quantity, told }) => line(quantity, told, assessment)),
			'small',
		),
		...listed(
			[paragraph('Not known yet:')],
			open.map(({ quantity: { id }, told }): Inline[] => [code(id), ' needs ', code(told.missing.join(', ')), '.']),
			'small',
		),
		...listed(
			[paragraph('Could not be worked out:')],
			broken.map(({ quantity: { id } }): Inline[] => [
				code(id),
				`: ${state.broken.get(slot(id)) ?? 'something that it reads could not be worked out'}.`,
			]),
			'small',
		),
		...(idle.length > 0
			? [paragraph('Does not apply to this build: ', code(idle.map(({ quantity }) => quantity.id).join(', ')), '.')]
			: []),
	];
}

function line(quantity: AnyQuantity, told: QuantityValue, assessment: Assessment): Inline[] {
	const { model, wording } = assessment;
	const { value, low, high, bound, assumed } = told;
	const show = (number: number) => wording.show(quantity.id, number)!;
	const unit = unitFor({ quantity }, wording.units);
	const partner = unit && wording.units === 'us' ? partnerOf(unit) : undefined;
	const both = typeof value === 'number' && partner ? ` (${write(value, partner)})` : '';
	const band = low !== null && high !== null && show(low) !== show(high) ? `, ${span(show(low), show(high))}` : '';
	const more = bound === null ? '' : ` or ${bound === 'above' ? 'more' : 'less'}`;
	const inputs = seen(quantity, model.quantities).flatMap(id => inputWords(id, assessment) ?? []);
	const sources = quantity.source.map(source => model.rulebook.sources[source] ?? source);
	return [
		code(quantity.id),
		' ',
		strong(wording.show(quantity.id, value as Outcome) ?? String(value)),
		`${both}${band}${more}. Formula: ${inSigns(quantity.formula)}.`,
		...(inputs.length > 0 ? [` From ${inputs.join(', ')}.`] : []),
		...(assumed.length > 0 ? [` Assumed: ${assumedWords(assumed, assessment)}`] : []),
		` ${quantity.nature === 'estimate' ? 'An estimate' : 'An exact formula'}; ${sources.join('; ')}.`,
	];
}

/** A formula for paper: one sign each, which no printer has to escape. */
const inSigns = (formula: string): string => formula.replaceAll('<=', '≤').replaceAll('>=', '≥');

/** What a quantity reads, through the hidden ones (a curve made ready, a cycle run), which have no words. */
function seen(quantity: AnyQuantity, all: readonly AnyQuantity[]): string[] {
	const through = quantityInputs(quantity).flatMap(id => {
		const input = all.find(other => other.id === id);
		return input?.kind === 'hidden' ? seen(input, all) : [id];
	});
	return [...new Set(through)];
}

/** An input with its value: an answer as it was given, anything else as it was worked out; null when it is not known. */
function inputWords(id: string, { model, sheet, state, wording }: Assessment): string | null {
	const question = model.rulebook.questions.find(other => other.id === id);
	const answer = question && answerTo(sheet, id);
	const value = valueIn(state, id);
	if (value === undefined || value === null) return null;
	const shown =
		question && answer?.value !== undefined ? showAnswer(question, answer, wording.units) : wording.show(id, value);
	return shown === null ? null : `${id} ${shown}`;
}
