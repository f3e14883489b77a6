import type { Outcome } from '../expressions/tree.ts';
import type { AnyQuantity } from '../quantities/quantity.ts';
import type { Threshold } from '../rulebook/rulebook.ts';
import type { Question, UnitSet } from '../sheet/question.ts';
import type { Answer, CircuitAnswer } from '../sheet/sheet.ts';
import { canonicalUnits, type Kind } from '../units/kinds.ts';
import { unitNamed } from '../units/names.ts';
import { shownUnit } from '../units/shown.ts';
import { toCanonical, type Unit } from '../units/unit.ts';
import { write } from '../units/write.ts';

/** What a name is, as far as writing it goes. */
export interface Formattable {
	readonly question?: Question;
	readonly quantity?: AnyQuantity;
	readonly threshold?: Threshold;
	/** The kind of `value` in a rule on each cylinder, with the question it comes from. */
	readonly reading?: Question;
}

/** The unit in which a number is written for a person: the question's, the quantity's, or the usual one of its kind. */
export function unitFor(what: Formattable, set: UnitSet): Unit | null {
	const of = what.question ?? what.reading ?? what.quantity ?? what.threshold;
	if (of === undefined) return null;
	const known = units[set].get(of);
	if (known !== undefined) return known;
	const found = findUnit(what, set);
	units[set].set(of, found);
	return found;
}

/** Found once: the same names are written many times. */
const units: Readonly<Record<UnitSet, WeakMap<object, Unit | null>>> = { us: new WeakMap(), metric: new WeakMap() };

function findUnit(what: Formattable, set: UnitSet): Unit | null {
	const { question = what.reading, quantity, threshold } = what;
	if (question) {
		const symbol = question.unit[set][0];
		return symbol === undefined || question.of.length > 1 ? null : (unitNamed(symbol, [...question.of]) ?? null);
	}
	const kind = quantity?.kind ?? threshold?.kind;
	if (kind === undefined || !(kind in canonicalUnits)) return null;
	const units = quantity?.shown ?? (threshold?.unit ? { us: threshold.unit, metric: threshold.unit } : undefined);
	const own = units && unitNamed(units[set], [kind as Kind]);
	return own ?? shownUnit(kind as Kind, set);
}

/** A value in words, in the person's units; null when there is nothing to write. */
export function formatValue(value: Outcome, what: Formattable, set: UnitSet, inSentence = false): string | null {
	if (value === undefined || value === null) return null;
	if (typeof value === 'number') {
		const said = what.threshold?.shown?.[set];
		if (said !== undefined) return said;
		const unit = unitFor(what, set);
		if (!Number.isFinite(value)) return null;
		return unit ? write(asRead(value, unit), unit) : String(Number(value.toPrecision(4)));
	}
	if (typeof value === 'boolean') return value ? 'yes' : 'no';
	if (typeof value === 'string') return wordsOf(value, what.question, inSentence);
	// A hidden node (a curve made ready, a cycle run) has no words.
	return Array.isArray(value) ? showList(value, what.question ?? what.reading, set, inSentence) : null;
}

/** A choice as the list has it, or as it reads in a sentence. */
const wordsOf = (choice: string, question: Question | undefined, inSentence: boolean): string =>
	(inSentence ? question?.said?.[choice] : undefined) ?? question?.choices[choice] ?? choice;

/** A number no finer than it is known or read: tenths of a percent, and 0.01 bar, as a gauge shows it. */
function asRead(value: number, { symbol }: Unit): number {
	if (symbol === '%') return inTenths(value);
	return symbol === 'bar' && Math.abs(value) >= leastBar ? Math.round(value / stepBar) * stepBar : value;
}

/** Pa: what a gauge in bar is read to, and from where on that is fine enough. */
const stepBar = 1e3;
const leastBar = 1e4;

/** A share in whole tenths of a percent: finer than that nothing here is known. A tiny one keeps its digits. */
const inTenths = (share: number): number => (Math.abs(share) < 0.001 ? share : Math.round(share * 1000) / 1000);

function showList(list: readonly unknown[], question: Question | undefined, set: UnitSet, inSentence: boolean): string {
	if (list.length === 0) return 'none';
	const unit = question && unitFor({ question }, set);
	const item = (part: unknown): string => {
		if (typeof part === 'string') return wordsOf(part, question, inSentence);
		if (typeof part === 'number') return unit ? write(part, unit) : String(Number(part.toPrecision(4)));
		if (part === null) return 'not measured';
		if (Array.isArray(part)) return part.map(item).join(' and ');
		return typeof part === 'object' && 'circuit' in part ? String(part.circuit) : String(part);
	};
	return list.map(item).join(', ');
}

/** An answer as it stands in the sheet: its own numbers in its own units, choices in words. */
export function formatAnswer(question: Question, answer: Answer, set: UnitSet): string {
	const { value, unit } = answer;
	const units = unit === undefined ? question.unit[set] : typeof unit === 'string' ? [unit] : unit;
	const symbol = units[0] === undefined || units[0] === '1' ? '' : units[0] === ':1' ? ':1' : ` ${units[0]}`;
	if (typeof value === 'number') return `${value}${symbol}`;
	if (question.kind === 'curve')
		return (value as number[][]).map(([x, y]) => `${x} ${units[0]} at ${y} ${units[1]}`).join(', ');
	if (question.kind === 'per-cylinder')
		return `${(value as (number | null)[]).map(reading => reading ?? '-').join(', ')}${symbol}`;
	if (question.kind === 'loads')
		return (value as [string, number][]).map(([name, load]) => `${name} ${load}${symbol}`).join(', ');
	if (question.kind === 'circuits')
		return (value as CircuitAnswer[]).map(circuit => showCircuit(circuit, set)).join('; ');
	return formatValue(value as Outcome, { question }, set) ?? '';
}

/** A sheet has a circuit's length in feet. */
const foot = unitNamed('ft', ['length'])!;

function showCircuit({ circuit, from, to, state, load, length }: CircuitAnswer, set: UnitSet): string {
	const ends = [from && `from ${from}`, to && `to ${to}`].filter(Boolean).join(' ');
	const facts = [
		ends,
		state,
		load !== undefined && `${load} A`,
		length !== undefined &&
			(set === 'us' ? `${length} ft` : write(toCanonical(length, foot), unitNamed('m', ['length'])!)),
	];
	return `${circuit} (${facts.filter(Boolean).join(', ')})`;
}
