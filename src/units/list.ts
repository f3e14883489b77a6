import { type Item, itemsIn } from './items.ts';
import { type Asked, noNumber, type Reading, type Refusal, readNumeral, refusal } from './read.ts';
import { quoted } from './spelling.ts';
import type { Unit } from './unit.ts';

/** A list read: kept and as typed, in one unit; null where the person could not measure. */
export type ListReading = {
	readonly ok: true;
	readonly values: readonly (number | null)[];
	readonly typed: readonly (number | null)[];
	readonly unit: Unit;
};

/** Pairs read, each number in its column's unit. */
export type PairsReading = {
	readonly ok: true;
	readonly values: readonly (readonly [number, number])[];
	readonly typed: readonly (readonly [number, number])[];
	readonly units: readonly [Unit, Unit];
};

/** Nobody types more; whatever is pasted beyond it is refused unread. */
const longest = 20_000;
const tooLong = refusal(`That is too long for one answer: more than ${longest} characters.`);

const howToType = 'Type two numbers a pair, and a comma or a new line after each pair.';

/** Reads `150 152 - 149 psi`: one unit for all, said once, behind any of them or not at all. `-` is not measured. */
export function readList(text: string, asked: Asked): ListReading | Refusal {
	if (text.length > longest) return tooLong;
	const found = itemsIn(text);
	if ('misfit' in found) return refusal(noNumber(found.misfit, asked));
	const readings = readColumn(found.items, asked);
	if (!Array.isArray(readings)) return readings;
	const unit = readings.find(reading => reading !== null)?.unit;
	if (!unit) return refusal(noNumber(text, asked));
	return {
		ok: true,
		values: readings.map(reading => reading?.value ?? null),
		typed: readings.map(reading => reading?.typed ?? null),
		unit,
	};
}

/** Reads pairs from one line, `0.6 15, 1.5 90`, or from lines of two columns as pasted from a table. */
export function readPairs(text: string, asked: readonly [Asked, Asked]): PairsReading | Refusal {
	if (text.length > longest) return tooLong;
	const columns: [Item[], Item[]] = [[], []];
	for (const row of rows(text)) {
		const found = itemsIn(row);
		const [x, y, ...more] = 'items' in found ? found.items : [];
		if (!(x?.numeral && y?.numeral) || more.length > 0) {
			return refusal(`${quoted(row)} is not a pair. ${howToType}`);
		}
		columns[0].push(x);
		columns[1].push(y);
	}
	const xs = readColumn(columns[0], asked[0]);
	const ys = readColumn(columns[1], asked[1]);
	if (!Array.isArray(xs)) return xs;
	if (!Array.isArray(ys)) return ys;
	const both = xs.flatMap((x, row) => (x && ys[row] ? [[x, ys[row]] as const] : []));
	const first = both[0];
	if (!first) return refusal(`Nothing was typed. ${howToType}`);
	return {
		ok: true,
		values: both.map(([x, y]) => [x.value, y.value] as const),
		typed: both.map(([x, y]) => [x.typed, y.typed] as const),
		units: [first[0].unit, first[1].unit],
	};
}

/** Every item in the column's one unit: the one that is said somewhere, else the shown one. */
function readColumn(items: readonly Item[], asked: Asked): (Reading | null)[] | Refusal {
	const said = items.find(item => item.spelling !== '')?.spelling ?? '';
	const readings: (Reading | null)[] = [];
	let unit: Unit | undefined;
	for (const { word, numeral, spelling } of items) {
		if (!numeral) {
			readings.push(null);
			continue;
		}
		const reading = readNumeral(numeral, spelling || said, word, asked);
		if (!reading.ok) return reading;
		unit ??= reading.unit;
		if (reading.unit !== unit) {
			return refusal(`${unit.symbol} and ${reading.unit.symbol} stand in one list. Type all numbers in one unit.`);
		}
		readings.push(reading);
	}
	return readings;
}

function rows(text: string): string[] {
	const lines = text.split(/[\r\n]/).filter(line => line.trim() !== '');
	if (lines.length !== 1) return lines;
	const line = lines[0]!;
	const mark = [';', ', ', ','].find(mark => line.includes(mark));
	return mark === undefined ? [line] : line.split(mark).filter(row => row.trim() !== '');
}
