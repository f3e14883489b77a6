import { sanitize } from '../text/sanitize.ts';

/** Prints rows as CSV (RFC 4180). A cell that a spreadsheet would take for a formula gets an apostrophe in front. */
export function printCsv(rows: readonly (readonly string[])[]): string {
	return rows.map(row => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(text: string): string {
	const plain = sanitize(text);
	const harmless = /^[=+\-@]/.test(plain) ? `'${plain}` : plain;
	return /[",]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
