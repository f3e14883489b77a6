import { dsvFormat } from 'd3-dsv';

/** A row of cells as it stands in the text: of one line, or of several where a quoted cell holds line breaks. */
export interface LogicalLine {
	/** Of its first line, from 1. */
	readonly line: number;
	readonly text: string;
	readonly lines: number;
}

/** How many lines one quoted cell may go over; a quote that is open longer was never closed. */
export const longestCell = 20;

/** Whether a quoted cell is open at the end of a text. */
export function isOpen(text: string): boolean {
	let quotes = 0;
	for (let at = text.indexOf('"'); at >= 0; at = text.indexOf('"', at + 1)) quotes++;
	return quotes % 2 === 1;
}

/** Puts lines together whose quoted cells go on in the next; one whose quote is never closed stays alone. */
export function* logicalLines(lines: readonly string[], first = 1): Generator<LogicalLine> {
	for (let at = 0; at < lines.length; ) {
		let text = lines[at]!;
		let taken = 1;
		while (isOpen(text) && taken < longestCell && at + taken < lines.length) text += `\n${lines[at + taken++]}`;
		if (isOpen(text)) [text, taken] = [lines[at]!, 1];
		yield { line: first + at, text, lines: taken };
		at += taken;
	}
}

const readers = new Map<string, (text: string) => string[]>();

/** The cells of one logical line. */
export function cellsOf(text: string, delimiter: string): string[] {
	if (!text.includes('"')) return text.split(delimiter);
	let reader = readers.get(delimiter);
	if (!reader) {
		const format = dsvFormat(delimiter);
		reader = line => format.parseRows(line)[0] ?? [''];
		readers.set(delimiter, reader);
	}
	return reader(text);
}
