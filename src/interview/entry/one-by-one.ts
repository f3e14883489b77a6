import type { Question, UnitSet } from '../../sheet/question.ts';
import { itemsIn } from '../../units/items.ts';
import { readEntry } from './entry.ts';
import { howKnown } from './known.ts';

/** A line of a list that is typed piece by piece: the whole of it, what it has come to, or why this piece does not fit. */
export type Piece =
	| { readonly is: 'whole'; readonly text: string }
	| { readonly is: 'begun'; readonly prompt: string }
	| { readonly is: 'problem'; readonly problem: string };

const separators: Partial<Record<Question['kind'], string>> = {
	'per-cylinder': ' ',
	'firing-order': '-',
	pairs: ', ',
	curve: ', ',
	loads: ', ',
	codes: ', ',
	circuits: ' | ',
};

/** The pieces so far as one line; how they are known, said at any of them, stands behind them all. */
export function joinedPieces(question: Question, pieces: readonly string[]): string {
	const read = pieces.filter(piece => piece !== '').map(piece => howKnown(piece, question));
	const known = read.flatMap(({ known }) => known ?? []).at(-1);
	const text = read.map(({ line }) => line).join(separators[question.kind] ?? ' ');
	return known ? `${text} ${known}` : text;
}

/**
 * What a line does to a list of which some pieces stand already. A list that has its length (readings, firing order) goes
 * on until it is whole; any other one from a lone first point or pair, or from a line that ends in its separator, until a
 * line with nothing on it.
 */
export function pieceOf(
	question: Question,
	begun: readonly string[],
	line: string,
	units: UnitSet,
	cylinders: number,
): Piece {
	const separator = separators[question.kind]?.trim() || ',';
	const typed = line.trim();
	const goesOn = typed.endsWith(separator) && separators[question.kind] !== undefined;
	const piece = goesOn ? typed.slice(0, -separator.length).trim() : typed;
	const text = joinedPieces(question, [...begun, piece]);
	if (separators[question.kind] === undefined || text === '') return { is: 'whole', text: typed };
	if (typed === '') return { is: 'whole', text };
	switch (question.kind) {
		case 'per-cylinder':
			return reading(question, text, units, cylinders);
		case 'firing-order':
			return inTurn(text, cylinders);
		default: {
			const lone = ['curve', 'pairs'].includes(question.kind) && begun.length === 0 && !/[,;\n]/.test(typed);
			if (!(goesOn || lone || begun.length > 0)) return { is: 'whole', text };
			const alone = question.kind === 'curve' ? null : readEntry(question, piece, units, cylinders);
			if (alone?.is === 'problem') return { is: 'problem', problem: alone.problem };
			return { is: 'begun', prompt: `Taken: ${piece}. The next one; nothing more: Enter.` };
		}
	}
}

/** Readings in cylinder order: each is held against what the question takes, as if the engine had no more cylinders. */
function reading(question: Question, text: string, units: UnitSet, cylinders: number): Piece {
	const { line } = howKnown(text, question);
	const found = itemsIn(line);
	const count = 'items' in found ? found.items.length : cylinders;
	if (count >= cylinders || !('items' in found)) return { is: 'whole', text };
	const last = found.items.at(-1)!;
	const entry = found.items.some(({ numeral }) => numeral !== null) ? readEntry(question, line, units, count) : null;
	if (entry?.is === 'problem') return { is: 'problem', problem: entry.problem };
	const read = last.numeral === null ? 'not measured' : `${last.word} ${last.spelling}`.trim();
	return {
		is: 'begun',
		prompt: `Cylinder ${count}: ${read}${entry?.is === 'odd' ? ' (odd)' : ''}. Cylinder ${count + 1} of ${cylinders}?`,
	};
}

/** Cylinders in the order they fire, each once. */
function inTurn(text: string, cylinders: number): Piece {
	const order = (/^\d{2,9}$/.test(text) ? [...text] : text.split(/[-,\s]+/)).map(Number);
	if (order.length >= cylinders || order.some(Number.isNaN)) return { is: 'whole', text };
	const strange = order.find(
		(cylinder, at) => !(cylinder >= 1 && cylinder <= cylinders) || order.indexOf(cylinder) < at,
	);
	if (strange !== undefined) {
		const why = strange >= 1 && strange <= cylinders ? 'stands there already' : `is none of 1 to ${cylinders}`;
		return { is: 'problem', problem: `Cylinder ${strange} ${why}.` };
	}
	return { is: 'begun', prompt: `${order.join('-')}. Which fires next, number ${order.length + 1} of ${cylinders}?` };
}
