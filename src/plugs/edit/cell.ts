import { gaugeInSheet, readGauge } from '../../sheet/gauge.ts';
import { pinFields } from '../../sheet/plug-fields.ts';
import type { Pin } from '../../sheet/plugs.ts';

/** The columns of a table of pins, in their order. */
export const columns = ['pin', 'wire', 'circuit', 'gauge', 'note'] as const;
export type Column = (typeof columns)[number];

/** What stands in a cell. */
export const cellText = (pin: Pin | undefined, column: Column): string => String(pin?.[column] ?? '');

/** The pin with another text in one of its cells; or what is accepted there. A blank cell says nothing. */
export function withCell(pin: Pin, column: Column, text: string): Pin | { readonly accepted: string } {
	const plain = text.replace(/\s+/g, ' ').trim();
	const { [column]: _, ...rest } = pin;
	if (plain === '' && column !== 'pin') return rest as Pin;
	const gauge = column === 'gauge' ? readGauge(plain) : null;
	const value = gauge ? gaugeInSheet(gauge) : plain;
	const field = pinFields[column]!;
	if (!field.fits(value)) return { accepted: field.accepted };
	// The keys stay in their usual order, so that a sheet reads alike whoever wrote it.
	const all: Record<string, unknown> = { ...rest, [column]: value };
	const order = Object.keys(pinFields);
	return Object.fromEntries(
		Object.entries(all).sort(([a], [b]) => order.indexOf(a) - order.indexOf(b)),
	) as never as Pin;
}

/** The name that comes after one: 15 after 14, A8 after A7, L after K; blank where there is none. */
export function nameAfter(name: string, taken: ReadonlySet<string>): string {
	let next = name.trim();
	do next = following(next);
	while (next !== '' && taken.has(next.toUpperCase()));
	return next;
}

function following(name: string): string {
	const [, before, digits] = /^(.*?)(\d{1,6})$/.exec(name) ?? [];
	if (digits !== undefined) return `${before}${String(Number(digits) + 1).padStart(digits.length, '0')}`;
	return /^[A-Ya-y]$/.test(name) ? String.fromCharCode(name.charCodeAt(0) + 1) : '';
}
