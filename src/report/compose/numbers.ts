import type { Assessment } from '../../audit/assess.ts';
import type { QuantityValue } from '../../audit/audit.ts';
import { quantityInputs } from '../../audit/quantity-values.ts';
import type { Outcome } from '../../expressions/tree.ts';
import { slotNamed } from '../../graph/graph.ts';
import type { AnyQuantity } from '../../quantities/quantity.ts';
import { answerTo } from '../../sheet/sheet.ts';
import { partnerOf } from '../../units/names.ts';
import { write } from '../../units/write.ts';
import { formatAnswer, unitFor } from '../../wording/format.ts';
import { type Block, code, type Inline, listed, paragraph, type Section, strong } from '../document.ts';
import { figures } from '../pictures/figures.ts';
import type { ReportContext } from './context.ts';
import { fittedMark, fittedTo } from './fitted.ts';
import { rangeText } from './names.ts';
import { assumedName, usualValuesText } from './subjects.ts';

/** Every quantity by name: value, band, formula, inputs, what was assumed, source; then those without a value, and why. */
export const numbers = (context: ReportContext): Section => ({
	title: 'The numbers',
	compose: () => everyNumber(context),
});

function everyNumber(assessment: ReportContext): Block[] {
	const { audit, state, pictures, wording } = assessment;
	const known: Inline[][] = [];
	const open: Inline[][] = [];
	const broken: Inline[][] = [];
	const idle: string[] = [];
	const words = namesOf(assessment);
	for (const id of Object.keys(audit.quantities).sort()) {
		const entry = audit.quantities[id]!;
		const slot = slotNamed(state.graph, id);
		if (entry.value !== null) known.push(line(wording.what(id, null).quantity!, entry, words, assessment));
		else if (entry.missing.length > 0) open.push([code(id), ' needs ', code(entry.missing.join(', ')), '.']);
		// What a log would say is nothing that this build lacks.
		else if (state.values[slot] === null) idle.push(...(id.startsWith('log.') ? [] : [id]));
		else broken.push([code(id), `: ${state.broken.get(slot) ?? 'something that it reads could not be worked out'}.`]);
	}
	return [
		...fittedTo(audit),
		...(pictures ? figures(assessment, ['air-meter', 'compression']) : []),
		...listed([], known, 'small'),
		...listed([paragraph('Not known yet:')], open, 'small'),
		...listed([paragraph('Could not be worked out:')], broken, 'small'),
		...(idle.length > 0 ? [paragraph('Does not apply to this build: ', code(idle.join(', ')), '.')] : []),
	];
}

/** How inputs and usual values are named; the same ones stand in line after line. */
interface Names {
	readonly input: (id: string) => string | null;
	readonly assumed: (id: string) => string;
}

const namesOf = (assessment: Assessment): Names => ({
	input: once(id => inputWords(id, assessment)),
	assumed: once(id => assumedName(id, assessment)),
});

/** Words that are made when they are first asked for. */
function once<T>(make: (id: string) => T): (id: string) => T {
	const made = new Map<string, T>();
	return id => {
		let words = made.get(id);
		if (words === undefined) made.set(id, (words = make(id)));
		return words;
	};
}

function line(quantity: AnyQuantity, entry: QuantityValue, names: Names, assessment: Assessment): Inline[] {
	const { model, wording } = assessment;
	const { value, low, high, bound, assumed } = entry;
	const unit = unitFor({ quantity }, wording.units);
	const partner = unit && wording.units === 'us' ? partnerOf(unit) : undefined;
	const both = typeof value === 'number' && partner ? ` (${write(value, partner)})` : '';
	const [least, most] = [low, high].map(end => wording.show(quantity.id, end));
	const band = least && most && least !== most ? `, ${rangeText(least, most)}` : '';
	const more = bound === null ? '' : ` or ${bound === 'above' ? 'more' : 'less'}`;
	const inputs = [...seen(quantity, wording)].map(names.input).filter(input => input !== null);
	const sources = quantity.source.map(source => model.rulebook.sources[source] ?? source);
	return [
		code(quantity.id),
		' ',
		strong(wording.show(quantity.id, value as Outcome) ?? String(value)),
		`${both}${band}${more}${fittedMark(assessment, quantity.id)}. Formula: ${inSigns(wording.say(quantity.formula))}.`,
		...(inputs.length > 0 ? [` From ${inputs.join(', ')}.`] : []),
		...(assumed.length > 0 ? [` Assumed: ${usualValuesText(assumed.map(names.assumed))}`] : []),
		` ${quantity.nature === 'estimate' ? 'An estimate' : 'By the formula'}; ${sources.join('; ')}.`,
	];
}

/** A formula for paper: one sign each, which no printer has to escape. */
const inSigns = (formula: string): string => formula.replaceAll('<=', '≤').replaceAll('>=', '≥');

/** What a quantity reads, through the hidden ones (a curve made ready, a cycle run), which have no words. */
function seen(quantity: AnyQuantity, wording: Assessment['wording'], found = new Set<string>()): Set<string> {
	for (const id of quantityInputs(quantity)) {
		const input = wording.what(id, null).quantity;
		if (input?.kind === 'hidden') seen(input, wording, found);
		else found.add(id);
	}
	return found;
}

/** An input with its value in the units of the audit; null when it is not known. */
function inputWords(id: string, { sheet, state, wording }: Assessment): string | null {
	const slot = slotNamed(state.graph, id);
	const value = state.values[slot];
	if (value === undefined || value === null) return null;
	const { question } = wording.what(id, null);
	const answer = question && answerTo(sheet, id);
	// The columns of a curve and the names of loads are as they were given.
	const shown =
		question?.kind === 'curve' || question?.kind === 'loads' || question?.kind === 'circuits'
			? answer?.value === undefined
				? null
				: formatAnswer(question, answer, wording.units)
			: wording.show(id, value);
	return shown === null ? null : `${id} ${shown}`;
}
