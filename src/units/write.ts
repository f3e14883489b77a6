import { partnerOf } from './names.ts';
import { significant } from './significant.ts';
import { fromCanonical, type Unit } from './unit.ts';

/** What computed numbers are worth: nobody tunes to a fourth digit. Whole digits are never rounded away. */
const usualDigits = 3;
/** Lengths are measured finer. */
const measuredDigits = 4;

/**
 * A canonical number as text in `unit`: `21.8 psi`, `5250 rpm`, `0.035 in`, `9.5:1`. Plain ASCII, a point, no thousands marks.
 * `digits` significant digits, usually 3, with no zeros at the end. Lengths keep the workshop's decimals: 0.030 in.
 * Throws a RangeError when the number is not finite.
 */
export function write(canonical: number, unit: Unit, digits?: number): string {
	const typed = fromCanonical(canonical, unit);
	if (!Number.isFinite(typed)) throw new RangeError(`cannot write ${canonical} in ${unit.symbol || 'bare numbers'}`);
	return unit.write?.(typed) ?? withSymbol(rounded(withoutNoise(typed), unit.places, digits), unit);
}

/** The number as it was typed, in full, and what it is in the other unit set: `1.5 bar, 21.8 psi`. */
export function writeBoth(canonical: number, unit: Unit, other: Unit | undefined = partnerOf(unit)): string {
	const own = writeInFull(fromCanonical(canonical, unit), unit);
	return other && other !== unit ? `${own}, ${write(canonical, other)}` : own;
}

/** A typed number with its unit, nothing rounded but the noise of a conversion behind the 12th digit. */
export function writeInFull(typed: number, unit: Unit): string {
	return unit.write?.(typed) ?? withSymbol(String(withoutNoise(typed)), unit);
}

/** The noise of a conversion is behind the 12th digit. */
const withoutNoise = (typed: number): number => significant(typed, 12);

function withSymbol(number: string, unit: Unit): string {
	if (unit.symbol === '' || unit.symbol === '1') return number;
	return unit.symbol === ':1' ? `${number}:1` : `${number} ${unit.symbol}`;
}

function rounded(value: number, places: number | undefined, digits: number | undefined): string {
	const size = Math.abs(value);
	if (size === 0) return '0';
	if (size < 1e-6 || size >= 1e15) return String(Number(value.toPrecision(digits ?? usualDigits)));
	const magnitude = Math.floor(Math.log10(size));
	const measured = places !== undefined && digits === undefined;
	let decimals = (measured ? measuredDigits : (digits ?? usualDigits)) - 1 - magnitude;
	// The workshop's decimals are enough, unless fewer than two digits would be left: 0.0025 in of runout.
	if (measured) decimals = Math.min(decimals, Math.max(places, 1 - magnitude));
	const text = value.toFixed(Math.max(0, decimals));
	const least = measured && size < 0.1 ? places : 0;
	return trimmed(text, least);
}

/** Without the zeros at the end of the decimals, of which the first `least` stay. */
function trimmed(text: string, least: number): string {
	const point = text.indexOf('.');
	if (point < 0) return text;
	let end = text.length;
	while (end > point + 1 + least && text[end - 1] === '0') end--;
	return text.slice(0, end === point + 1 ? point : end);
}
