import { type Numeral, numeralAt } from './numeral.ts';
import { plainText } from './spelling.ts';

/** One place of a list: a number (or a lone dash for "not measured") and the unit typed behind it, if any. */
export type Item = { readonly word: string; readonly numeral: Numeral | null; spelling: string };

/**
 * The items of a list on one line, or the word that does not fit in.
 * Items stand apart by spaces, semicolons or commas. A comma without a space beside it parts items only when
 * the whole list is one word: `150,152,149`. In `1,5 1,6` it is a decimal comma.
 */
export function itemsIn(text: string): { items: Item[] } | { misfit: string } {
	const items: Item[] = [];
	for (const word of words(text)) {
		const numeral = numeralAt(word);
		const last = items.at(-1);
		if (word === '-') items.push({ word, numeral: null, spelling: '' });
		else if (numeral) items.push({ word, numeral, spelling: numeral.rest });
		else if (last?.numeral && word !== '') last.spelling += last.spelling === '' ? word : ` ${word}`;
		else return { misfit: word };
	}
	return { items };
}

function words(text: string): string[] {
	const spaced = ` ${plainText(text)} `.replaceAll(', ', ' ').replaceAll(' ,', ' ').replaceAll(';', ' ');
	const apart = spaced.split(' ').filter(Boolean);
	const numbers = apart.filter(word => /^[-+.,]*\d/.test(word));
	return numbers.length === 1 ? apart.flatMap(word => word.split(',')) : apart;
}
