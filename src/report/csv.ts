import { sanitize } from '../text/sanitize.ts';

/**
 * Prints rows as CSV (RFC 4180). A cell that a spreadsheet would take for a formula, full-width
 * signs among them, gets an apostrophe in front; one with the other usual delimiter is quoted.
 */
export function printCsv(rows: readonly (readonly string[])[]): string {
	return rows.map(row => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(text: string): string {
	const plain = sanitize(text);
	const harmless = /^\s*[=+\-@＝＋－＠]/.test(plain) ? `'${plain}` : plain;
	return /[",;]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
