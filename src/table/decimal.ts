import type { Decimal } from './cell.ts';

/** A decimal sign between digits that cannot group thousands: not three digits behind it, or a zero alone before it. */
const behind = (sign: string) => `[-+]?(?:\\d*${sign}(?:\\d{1,2}|\\d{4,})|0*${sign}\\d{3})(?:[eE][-+]?\\d+)?`;

/**
 * Whether a point or a comma stands before the decimals of a text, by every cell of it: the sign that cells need which
 * cannot be thousands, more often than the other. Null when none has decimals.
 */
export function decimalOf(text: string, delimiter: string): Decimal | null {
	const [start, end] =
		delimiter === ',' ? ['"', '"'] : [`(?:^|[\\n"${delimiter}])\\s*`, `\\s*(?=[\\r\\n"${delimiter}]|$)`];
	const count = (pattern: string) => text.match(new RegExp(`${start}${pattern}${end}`, 'g'))?.length ?? 0;
	// Between commas without a quote only a point can stand before decimals.
	if (delimiter === ',' && !text.includes('"')) return /\d\.\d/.test(text) ? '.' : null;
	const commas = count(`(?:\\d{1,3}(?:\\.\\d{3})+)?${behind(',')}`);
	// Between commas nothing but a point is left.
	const points =
		delimiter === ',' ? (text.match(/\d\.\d/g)?.length ?? 0) : count(`(?:\\d{1,3}(?:,\\d{3})+)?${behind('\\.')}`);
	if (commas !== points) return commas > points ? ',' : '.';
	if (commas > 0) return '.';
	// Only threes: 1,234 without any point is 1.234, as nobody writes every number with thousands.
	if (delimiter === ',') return null;
	const [comma, point] = [count('[-+]?\\d+,\\d{3}'), count('[-+]?\\d+\\.\\d{3}')];
	return comma > point ? ',' : point > 0 ? '.' : null;
}
