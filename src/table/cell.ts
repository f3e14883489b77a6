export type Decimal = '.' | ',';

/** Cells that say that there is no reading. */
const missing = /^(?:|-+|\.+|\?+|nan|null|none|nil|n\/?a|na|undefined|#n\/a)$/i;

export const isMissing = (text: string): boolean => missing.test(text);

/** Most of them, at once. */
const simple = /^-?\d{1,15}(?:\.\d{1,15})?$/;

/** Whether a cell is a number as most are written. */
export const isSimple = (cell: string): boolean => simple.test(cell);

const plain = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d{1,4})?$/i;
const grouped = {
	'.': /^[+-]?[1-9]\d{0,2}(?:([,' \u00a0\u202f])\d{3})(?:\1\d{3})*(?:\.\d+)?$/,
	',': /^[+-]?[1-9]\d{0,2}(?:([.' \u00a0\u202f])\d{3})(?:\1\d{3})*(?:,\d+)?$/,
} as const;

/** A number as tables write it; NaN for a cell without a reading, undefined for what is neither, or is not finite. */
export function readCell(cell: string, decimal: Decimal): number | undefined {
	if (decimal === '.' && simple.test(cell)) return Number(cell);
	let text = cell.trim().replace(/^\u2212/, '-');
	if (isMissing(text)) return Number.NaN;
	if (grouped[decimal].test(text))
		text = text.replace(decimal === '.' ? /[,' \u00a0\u202f]/g : /[.' \u00a0\u202f]/g, '');
	if (decimal === ',') {
		if (text.includes('.')) return undefined;
		text = text.replace(',', '.');
	}
	if (!plain.test(text)) return undefined;
	const value = Number(text);
	return Number.isFinite(value) ? value : undefined;
}

const clock = /^\d{1,3}:\d{2}(?::\d{2})?(?:[.,]\d+)?$/;
const instant = /^\d{4}-?\d{2}-?\d{2}[T ]\d{2}:?\d{2}(?::?\d{2}(?:[.,]\d+)?)?(?: ?(?:Z|[+-]\d{2}:?\d{2}))?$/;

export const isClock = (cell: string): boolean => clock.test(cell.trim());

export const isInstant = (cell: string): boolean => instant.test(cell.trim());

/** Seconds of `21:06:06.069` or `6:06.069`; the first figure of two is minutes. */
export function readClock(cell: string): number | undefined {
	const text = cell.trim();
	if (!clock.test(text)) return isMissing(text) ? Number.NaN : undefined;
	return text
		.replace(',', '.')
		.split(':')
		.reduce((sum, part) => sum * 60 + Number(part), 0);
}

/** Seconds since 1970 of an instant as ISO 8601 writes it; without a zone it is taken for UTC, as only differences count. */
export function readInstant(cell: string): number | undefined {
	const text = cell.trim();
	if (!instant.test(text)) return isMissing(text) ? Number.NaN : undefined;
	const [, year, month, day, hour, minute, second = '0', zone] =
		/^(\d{4})-?(\d{2})-?(\d{2})[T ](\d{2}):?(\d{2})(?::?(\d{2}(?:[.,]\d+)?))? ?(Z|[+-]\d{2}:?\d{2})?$/.exec(text)!;
	const days = Date.UTC(Number(year), Number(month) - 1, Number(day)) / 1000;
	const [, sign, zoneHour = '0', zoneMinute = '0'] = /^([+-])(\d{2}):?(\d{2})$/.exec(zone ?? '') ?? [];
	const ahead = (Number(zoneHour) * 60 + Number(zoneMinute)) * 60 * (sign === '-' ? -1 : 1);
	return days + Number(hour) * 3600 + Number(minute) * 60 + Number(second.replace(',', '.')) - ahead;
}
