import type { UnitSet } from '../../sheet/question.ts';
import type { Text } from '../../sheet/text.ts';
import { type FigureUnit, figureUnits, spelledUnits } from './figure-units.ts';
import { roundLike } from './rounding.ts';

/*
 * Figures with a unit inside the texts of rules/ are marked, so that each reader gets them in one unit set:
 *   {=4 in}                  converted, and rounded as roughly as it was said
 *   {=4 in|100 mm}           both by hand, the US one first; they may differ by 5 %
 *   {=10 degF, difference}   a difference of temperatures, not a temperature
 *   {=105 degC, both}        a designation or a trade unit that every reader gets as it stands
 * A figure may be several that share a unit: {=6 to 10 psi}, {=0.065, 0.083 and 0.095 in}.
 */

const number = '(?:\\d+ )?\\d+/\\d+|-?\\d+(?:\\.\\d+)?';
const list = `(?:${number})(?:(?:, | to | and | or | of )(?:${number}))*`;
const figure = new RegExp(`^(${list}) (${spelledUnits})$`);
const eachNumber = new RegExp(number, 'g');
const mark = /\{=([^{}]*)\}/g;

/** A figure with its unit that stands in a text unmarked. `3 in a row` and `76 in 100` are no lengths. */
const unmarked = new RegExp(
	`(?<![\\w./{=-])(?:${number})[ -](?:${spelledUnits})(?![\\w/-])(?! (?:a|the|each|every|\\d+)\\b)`,
);
/** A unit in words: `half an inch`, `a few thou`, `psi for psi`. */
const inWords =
	/\b(?:(?:an?|half an?|each|per|every|one|two|three|four|five|six|ten|few) (?:inch(?:es)?|foot|feet|miles?|thou|gallons?|quarts?|lit(?:er|re)s?)|thou|psi|mph|lb-ft|degF|degC)\b/;

/** The unmarked figure of a text, as it stands there; null without one. */
export function unmarkedFigure(text: string): string | null {
	const rest = text.replace(mark, '');
	return (unmarked.exec(rest) ?? inWords.exec(rest))?.[0] ?? null;
}

/** A text with its marks turned into figures of both sets; `refuse` hears of each mark that is none. */
export function figured(text: string, refuse: (message: string) => void): Text {
	if (!text.includes('{=')) return text;
	const reported = new Set<string>();
	const form = (set: UnitSet) =>
		text.replace(mark, (whole, inner: string) => {
			const both = bothSets(inner);
			if (typeof both !== 'string') return both[set];
			if (!reported.has(whole)) refuse(`${whole}: ${both}`);
			reported.add(whole);
			return '';
		});
	return { us: form('us'), metric: form('metric') };
}

/** What a mark says in both sets, or what is wrong with it. */
function bothSets(inner: string): Record<UnitSet, string> | string {
	const [, said = '', how] = /^(.*?)(?:, (difference|both))?$/.exec(inner)!;
	const [first = '', second, third] = said.split('|');
	if (third !== undefined) return 'a mark holds one figure, or a US one and a metric one with | between';
	const own = readFigure(first);
	if (!own) return noFigure(first);
	if (how === 'both') return { us: first, metric: first };
	if (second === undefined) {
		const other = converted(own, how === 'difference');
		return own.unit.set === 'us' ? { us: first, metric: other } : { us: other, metric: first };
	}
	const metric = readFigure(second);
	if (!metric) return noFigure(second);
	if (own.unit.set !== 'us' || metric.unit.set !== 'metric') return 'the US figure comes first, the metric one second';
	return agree(own, metric, how === 'difference')
		? { us: first, metric: second }
		: `the two figures are not the same within 5 %: the first is ${converted(own, how === 'difference')}`;
}

const noFigure = (text: string) =>
	`${JSON.stringify(text)} is no figure with a unit; units are ${spelledUnits.replaceAll('|', ', ')}`;

interface Figure {
	readonly text: string;
	readonly numbers: readonly string[];
	readonly unit: FigureUnit;
}

function readFigure(text: string): Figure | null {
	const found = figure.exec(text);
	if (!found) return null;
	const [, numbers = '', symbol = ''] = found;
	return { text: numbers, numbers: numbers.match(eachNumber) ?? [], unit: figureUnits[symbol]! };
}

function converted({ text, unit }: Figure, difference: boolean): string {
	const other = figureUnits[unit.other]!;
	const shown = text.replace(eachNumber, one => {
		const value = (kept(one, unit, difference) - (difference ? 0 : other.offset)) / other.factor;
		return String(roundLike(value, one, unit.kind === 'temperature' && !difference));
	});
	return `${shown} ${unit.other}`;
}

const kept = (written: string, { factor, offset }: FigureUnit, difference: boolean): number =>
	amountOf(written) * factor + (difference ? 0 : offset);

/** kg/m3: an injector of 1 lb/h passes 10.5 cc/min, as the trade counts; the density of the test fluid behind it. */
const testFluid = 720;

/** Whether the figures of a pair are the same, each within 5 % (temperatures within 3 K, their differences within 1 K). */
function agree(us: Figure, metric: Figure, difference: boolean): boolean {
	const flows = us.unit.kind === 'mass-flow' && metric.unit.kind === 'volume-flow';
	if (!flows && us.unit.kind !== metric.unit.kind) return false;
	if (us.numbers.length !== metric.numbers.length) return false;
	return us.numbers.every((written, index) => {
		const a = kept(written, us.unit, difference) / (flows ? testFluid : 1);
		const b = kept(metric.numbers[index]!, metric.unit, difference);
		const within = us.unit.kind === 'temperature' ? (difference ? 1 : 3) : 0.05 * Math.abs(a);
		return Math.abs(a - b) <= within;
	});
}

/** `1 1/2`, `3/4`, `0.06`. */
function amountOf(written: string): number {
	return written
		.split(' ')
		.map(part => part.split('/').map(Number))
		.reduce((sum, [over = 0, under = 1]) => sum + over / under, 0);
}
