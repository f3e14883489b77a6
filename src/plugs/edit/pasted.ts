import { readGauge, writeGauge } from '../../sheet/gauge.ts';
import type { Pin } from '../../sheet/plugs.ts';
import { BadTable } from '../../table/problem.ts';
import { readColor } from '../color.ts';
import { readPinTable } from '../table.ts';
import { withCell } from './cell.ts';

/** Pins out of a pasted text, or what cannot be read in it. */
export type Pasted = { readonly pins: readonly Pin[] } | { readonly problem: string };

/**
 * A table of pins as it is pasted: from a spreadsheet or a file, with headers or without, or a phone's notes, a pin a line
 * (`14 green/white coolant temperature`). All of it, or nothing: a lost row is a lost wire.
 */
export function readPasted(text: string): Pasted {
	const lines = text
		.split(/\r\n?|\n/)
		.map(line => line.trimEnd())
		.filter(line => line.trim() !== '' && !line.trimStart().startsWith('#'));
	if (hasHeaders(lines[0] ?? '')) return withHeaders(text);
	const read = lines.map(readPinLine);
	const wrong = read.findIndex(pin => 'accepted' in pin);
	if (wrong >= 0)
		return { problem: `${JSON.stringify(lines[wrong]!.trim().slice(0, 60))}: ${(read[wrong] as Refused).accepted}` };
	return { pins: read as Pin[] };
}

interface Refused {
	readonly accepted: string;
}

/** A first line that names its columns. */
const hasHeaders = (line: string): boolean =>
	!/\d/.test(line) &&
	/\b(pin|cavity|terminal|no)\b/i.test(line) &&
	/\b(circuit|function|signal|description|carries)\b/i.test(line);

function withHeaders(text: string): Pasted {
	try {
		const { pins, problems } = readPinTable(text);
		return problems.length > 0 ? { problem: problems.slice(0, 3).join('\n') } : { pins };
	} catch (error) {
		if (error instanceof BadTable) return { problem: error.message };
		throw error;
	}
}

/** One pin of a line: `pin wire circuit`, between them blanks, commas, semicolons, tabs or bars; a size at the end. */
export function readPinLine(line: string): Pin | Refused {
	const bare = line.trim().replace(/^\||\|$/g, '');
	const cells = cellsOf(bare);
	const [pin = '', wire = '', circuit = '', gauge = '', ...note] = cells ?? wordsOf(bare);
	return [
		['wire', wire],
		['circuit', circuit],
		['gauge', gauge],
		['note', note.join(', ')],
	].reduce<Pin | Refused>(
		(made, [column, text]) => ('accepted' in made ? made : withCell(made, column as 'wire', said(text!))),
		withCell({ pin: '' }, 'pin', pin),
	);
}

/** A stroke for a wire or a circuit of which nothing is known. */
const said = (text: string): string => (/^[-\u2013\u2014]+$/.test(text.trim()) ? '' : text);

/** The cells of a line of a table: two are a pin and what it carries, or its wire; null for a line of words. */
function cellsOf(line: string): string[] | null {
	const between = ['\t', ';', '|', ','].find(sign => line.includes(sign));
	if (between === undefined) return null;
	const cells = line.split(between).map(cell => cell.trim().replace(/^"(.*)"$/, '$1'));
	if (/\s/.test(cells[0]!)) return null;
	if (cells.length === 2 && readColor(cells[1]!) === null) return [cells[0]!, '', cells[1]!];
	return cells;
}

/** The same of words: the first is the pin, then those that are a color, then what is left, a size with its unit taken off. */
function wordsOf(line: string): string[] {
	const [pin = '', ...words] = line
		.replace(/[,;|]\s/g, ' ')
		.replace(/^(\s*\S+?)[:=.](?=\s)/, '$1')
		.trim()
		.split(/\s+/);
	const { rest, gauge } = withoutSize(words);
	if (rest[0] === '-') return [pin, '', rest.slice(1).join(' '), gauge];
	let colored = 0;
	for (let count = 1; count <= rest.length; count++)
		if (readColor(rest.slice(0, count).join(' ')) !== null && !/^(on|and|with)$/i.test(rest[count - 1]!))
			colored = count;
	return [pin, rest.slice(0, colored).join(' '), rest.slice(colored).join(' '), gauge];
}

function withoutSize(words: readonly string[]): { readonly rest: readonly string[]; readonly gauge: string } {
	for (const count of [2, 1]) {
		const text = words.slice(-count).join(' ');
		const gauge =
			words.length > count && /^#?\d.*[a-z]/i.test(text) && /awg|ga\b|ga\.|gauge|mm/i.test(text)
				? readGauge(text)
				: null;
		if (gauge) return { rest: words.slice(0, -count), gauge: writeGauge(gauge) };
	}
	return { rest: words, gauge: '' };
}
