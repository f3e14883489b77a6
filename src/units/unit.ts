import type { Kind } from './kinds.ts';
import { significant } from './significant.ts';

/** A unit of one kind. The same spelling may name units of several kinds: `C` is a charge or a temperature. */
export type Unit = {
	/** The name written and stored, plain ASCII, one of its kind: `in`, `kPa abs`, `:1`. */
	readonly symbol: string;
	readonly kind: Kind;
	/** Canonical = typed x factor + offset. NaN where `curve` stands instead. */
	readonly factor: number;
	/** In the canonical unit; 0 for all but temperatures and octane. */
	readonly offset: number;
	/** For a unit that is no straight line (wire gauge). */
	readonly curve?: { toCanonical(typed: number): number; fromCanonical(canonical: number): number };
	/** The other spellings that shops use. Case, spaces, points and hyphens do not matter. */
	readonly also: readonly string[];
	/** The unit of the other unit set that says the same thing to somebody else. Missing: both sets use this one. */
	readonly partner?: string;
	/** Decimals that a workshop reads in this unit: inches to 0.001, millimeters to 0.01. */
	readonly places?: number;
	/** The usual value that the conversion leans on; the audit lists it among what was assumed. */
	readonly assumes?: string;
	/** What is wrong with a number in this unit, when not every number is one: there is no 7 AN. */
	readonly refuses?: (typed: number) => string | undefined;
	/** What a person must hear when this unit is read. */
	readonly remark?: (typed: number) => string;
	/** The text of a number in this unit, where digits and symbol are not the custom. */
	readonly write?: (typed: number) => string;
};

/** What a table says of one unit; the rest has a default. */
type Row = Partial<Omit<Unit, 'symbol' | 'kind'>>;

/** The units of a kind from a table of symbol and row. A row without a factor is a unit with a curve. */
export function unitTable(kind: Kind, rows: Readonly<Record<string, Row>>): Unit[] {
	return Object.entries(rows).map(([symbol, row]) => ({
		factor: Number.NaN,
		offset: 0,
		also: [],
		...row,
		symbol,
		kind,
	}));
}

/** A number in `unit` as a number in the canonical unit of its kind. */
export function toCanonical(typed: number, unit: Unit): number {
	return unit.curve ? unit.curve.toCanonical(typed) : typed * unit.factor + unit.offset;
}

/**
 * `toCanonical` without the noise that a multiplication leaves in the 16th digit: 70 % is 0.7 and not 0.7000000000000001.
 * For what a person wrote, so that an answer of 70 % stands on a limit of 0.7.
 */
export function toCanonicalRounded(typed: number, unit: Unit): number {
	return significant(toCanonical(typed, unit), 15);
}

/** The inverse of `toCanonical`. */
export function fromCanonical(canonical: number, unit: Unit): number {
	return unit.curve ? unit.curve.fromCanonical(canonical) : (canonical - unit.offset) / unit.factor;
}

/**
 * A difference (a spread) in `unit` as a difference in the canonical unit: 9 degF is 5 K, whatever the temperature.
 * On a unit with a curve the size `at` which it lies decides; without it a RangeError is thrown.
 */
export function spreadToCanonical(spread: number, unit: Unit, at?: number): number {
	if (!unit.curve) return spread * unit.factor;
	if (at === undefined) throw new RangeError(`a spread in ${unit.symbol} needs the size it belongs to`);
	return Math.abs(unit.curve.toCanonical(at + spread) - unit.curve.toCanonical(at - spread)) / 2;
}
