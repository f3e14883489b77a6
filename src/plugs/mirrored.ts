import type { ReadPin } from './half.ts';
import { cavities, type Pair } from './pairs.ts';

/** How one half may have been read from the wrong side, and how many pins agree then. */
export interface Mirrored {
	readonly how: string;
	readonly agree: number;
	readonly now: number;
}

/** No shell has more cavities in a row. */
const longestRow = 60;

/**
 * One half read at its face and the other at its wires: every row comes out wrong at once. Reported where turning each row of
 * cavities round, or shifting by one, makes at least twice as many pins agree, and ten more.
 */
export function mirroredReading(pair: Pair): Mirrored | null {
	if (pair.by === 'circuit') return null;
	const now = cavities(pair).filter(({ left, right }) => left.some(a => right.some(b => agree(a, b)))).length;
	const right = new Map(pair.right.pins.map(pin => [pin.pin, pin]));
	let best: Mirrored | null = null;
	for (const { how, turn } of turns(pair)) {
		const found = pair.left.pins.filter(pin => {
			const other = right.get(turn(pin.pin) ?? '');
			return other !== undefined && agree(pin, other);
		}).length;
		if (found >= 2 * now && found >= now + 10 && found > (best?.agree ?? 0)) best = { how, agree: found, now };
	}
	return best;
}

const agree = (a: ReadPin, b: ReadPin): boolean => a.circuit !== null && a.circuit === b.circuit;

interface Turn {
	readonly how: string;
	turn(pin: string): string | null;
}

/** The ways to misread a shell: rows by letter (A1 to A12), or of any length where pins are numbered through. */
function turns({ left, right }: Pair): Turn[] {
	const names = [...new Set([...left.pins, ...right.pins].map(({ pin }) => pin))];
	const parted = names.map(parts).filter(part => part !== null);
	const most = new Map<string, number>();
	for (const { row, number } of parted) most.set(row, Math.max(most.get(row) ?? 0, number));
	const last = Math.max(0, ...most.values());
	const by = (number: (of: number, row: string) => number) => (pin: string) => {
		const part = parts(pin);
		return part && `${part.row}${number(part.number, part.row)}`;
	};
	const lengths = Array.from({ length: Math.min(last, longestRow) }, (_, at) => at + 1).filter(
		length => length > 1 && last % length === 0,
	);
	return [
		{ how: 'each row of cavities turned round', turn: by((number, row) => most.get(row)! + 1 - number) },
		...lengths.map(length => ({
			how: `each row of ${length} cavities turned round`,
			turn: by(number => Math.floor((number - 1) / length) * length + length - ((number - 1) % length)),
		})),
		...lengths.map(length => ({
			how: `the rows of ${length} cavities in the other order`,
			turn: by(number => last - (Math.floor((number - 1) / length) + 1) * length + ((number - 1) % length) + 1),
		})),
		{ how: 'the numbers shifted by one', turn: by(number => number + 1) },
		{ how: 'the numbers shifted by one the other way', turn: by(number => number - 1) },
	];
}

function parts(pin: string): { readonly row: string; readonly number: number } | null {
	const found = /^([A-Z]*)(\d{1,3})$/.exec(pin);
	return found && { row: found[1]!, number: Number(found[2]) };
}
