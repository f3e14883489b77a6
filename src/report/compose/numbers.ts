import type { Assessment } from '../../audit/assess.ts';
import { quantityInputs } from '../../audit/quantity-values.ts';
import { unitFor } from '../../audit/show.ts';
import { partnerOf } from '../../units/names.ts';
import { write } from '../../units/write.ts';
import { type Block, code, heading, type Inline } from '../document.ts';
import { assumedWords } from './list.ts';

/** Every quantity: value, band, formula, inputs with their values, what was assumed, source. */
export function numbers(assessment: Assessment): Block[] {
	const { model, audit, wording } = assessment;
	const items = model.quantities
		.filter(({ id }) => audit.quantities[id]?.value !== null && id in audit.quantities)
		.map((quantity): Inline[] => {
			const { value, low, high, bound, assumed } = audit.quantities[quantity.id]!;
			const unit = unitFor({ quantity }, wording.units);
			const partner = unit && wording.units === 'us' ? partnerOf(unit) : undefined;
			const both = typeof value === 'number' && partner ? ` (${write(value, partner)})` : '';
			const band =
				low !== null && high !== null
					? `, ${wording.show(quantity.id, low)} to ${wording.show(quantity.id, high)}`
					: '';
			const told = wording.show(quantity.id, value as never) ?? String(value);
			const inputs = quantityInputs(quantity)
				.map(id => [id, wording.show(id, present(assessment, id))] as const)
				.filter(([, shown]) => shown !== null)
				.map(([id, shown]) => `${id} ${shown}`);
			const sources = quantity.source.map(source => model.rulebook.sources[source] ?? source);
			return [
				code(quantity.id),
				` ${told}${both}${band}${bound ? ` or ${bound === 'above' ? 'more' : 'less'}` : ''}. ${quantity.formula}.`,
				inputs.length > 0 ? ` From ${inputs.join(', ')}.` : '',
				assumed.length > 0 ? ` Assumed: ${assumedWords(assumed, assessment)}` : '',
				` ${quantity.nature === 'estimate' ? 'Estimate' : 'Exact'}; ${sources.join('; ')}.`,
			];
		});
	return items.length > 0 ? [heading(2, 'The numbers'), { is: 'items', items }] : [];
}

function present({ state }: Assessment, id: string) {
	const slot = state.graph.slotOf.get(id);
	return slot === undefined ? undefined : state.values[slot];
}
