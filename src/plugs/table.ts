import { gaugeInSheet, readGauge } from '../sheet/gauge.ts';
import type { HalfName, Pin, PlugHalf } from '../sheet/plugs.ts';
import { encodingOf } from '../table/bytes.ts';
import { BadTable, placed, shownCell } from '../table/problem.ts';
import { type SmallRow, smallTable, type Wanted } from '../table/small.ts';
import { pinName } from './half.ts';

/** The columns of a table of pins, by what they are called most. */
const usual: Readonly<Record<string, readonly string[]>> = {
	pin: ['pin', 'cavity', 'terminal', 'pin number', 'pin no', 'no'],
	wire: ['wire', 'color', 'colour', 'wire color', 'wire colour'],
	circuit: ['circuit', 'function', 'signal', 'description', 'carries'],
	gauge: ['gauge', 'awg', 'size', 'wire size'],
	note: ['note', 'notes', 'remark', 'comment'],
};
export const columnNames = Object.keys(usual);

/** Rows of a table of pins, and everything that is wrong with them, a line each. */
export interface PinTable {
	readonly pins: readonly Pin[];
	readonly problems: readonly string[];
}

/**
 * Reads a table of pins, strictly: a lost row is a lost wire. `named` are headers for columns, in place of the usual ones.
 *
 * @throws BadTable when it has no header line with pin, wire and circuit
 */
export function readPinTable(text: string, named: Readonly<Record<string, string>> = {}): PinTable {
	const wanted = Object.entries(usual).map(
		([id, headers]): Wanted => ({
			id,
			headers: Object.hasOwn(named, id) ? [named[id]!] : headers,
			optional: (id === 'gauge' || id === 'note') && !Object.hasOwn(named, id),
		}),
	);
	const { rows, problems } = smallTable(text, wanted);
	const read = rows.map(readRow);
	const all = [...problems, ...read.flatMap(row => row.problem ?? [])];
	if (rows.length === 0 && all.length === 0) throw new BadTable('no row under the header', 'a row a pin');
	return { pins: read.flatMap(row => row.pin ?? []), problems: all.sort((a, b) => lineOf(a) - lineOf(b)) };
}

/**
 * The same from the bytes of a file, in whatever encoding it is.
 *
 * @throws BadTable when it is no text, or has no such header
 */
export function readPinFile(bytes: Uint8Array, named: Readonly<Record<string, string>> = {}): PinTable {
	const { encoding, mark } = encodingOf(bytes);
	return readPinTable(new TextDecoder(encoding).decode(bytes.subarray(mark)), named);
}

const lineOf = (problem: string): number => Number(/line (\d+)/.exec(problem)?.[1] ?? 0);

/** The most signs of a name, and of a note. */
const longestCell = 200;
const longestNote = 1000;

function readRow({ line, cells, columns }: SmallRow): { readonly pin?: Pin; readonly problem?: string } {
	const { pin = '', wire = '', circuit = '', gauge = '', note = '' } = cells;
	const refuse = (id: string, found: string, accepted: string) => ({
		problem: `${placed({ line, column: columns[id]! })}: found ${found}; accepted: ${accepted}`,
	});
	if (pin === '') return refuse('pin', 'no pin', 'a pin in each row, like 14 or A7');
	const long = Object.entries(cells).find(([id, { length }]) => length > (id === 'note' ? longestNote : longestCell));
	if (long)
		return refuse(long[0], `${long[1].length} signs`, `at most ${long[0] === 'note' ? longestNote : longestCell}`);
	const size = gauge === '' ? null : readGauge(gauge);
	if (gauge !== '' && size === null)
		return refuse('gauge', `the gauge ${shownCell(gauge)}`, 'a gauge in AWG like 18 or 2/0, or a size like 0.75 mm2');
	return {
		pin: {
			pin,
			...(wire === '' ? {} : { wire }),
			circuit,
			...(size === null ? {} : { gauge: gaugeInSheet(size) }),
			...(note === '' ? {} : { note }),
		},
	};
}

/** What a table changes in a half, a line each; nothing where it says what is there already. */
export function changesBetween(before: PlugHalf | undefined, after: PlugHalf): string[] {
	const [old, now] = [linesOf(before), linesOf(after)];
	return [...new Set([...old.keys(), ...now.keys()])].flatMap(name => {
		const [was, is] = [old.get(name), now.get(name)];
		if (was === is) return [];
		return [
			was === undefined ? `+ ${name}: ${is}` : is === undefined ? `- ${name}: ${was}` : `~ ${name}: ${was} -> ${is}`,
		];
	});
}

function linesOf(half: PlugHalf | undefined): Map<string, string> {
	const lines = new Map<string, string>();
	for (const { pin, wire, circuit, gauge, note } of half?.pins ?? []) {
		const said = [wire, circuit || 'not known', gauge, note].filter(Boolean).join(', ');
		const name = pinName(pin);
		lines.set(name, lines.has(name) ? `${lines.get(name)} and ${said}` : said);
	}
	return lines;
}

/** The halves with one of them replaced, or added. What is said of a pin beyond the table (joined, fused) stays with it where its circuit stays. */
export function withHalf(halves: readonly PlugHalf[], half: PlugHalf): PlugHalf[] {
	const at = findHalf(halves, half.plug, half.half);
	if (at < 0) return [...halves, half];
	const old = halves[at]!;
	const pins = half.pins.map(pin => {
		const same = old.pins.find(before => pinName(before.pin) === pinName(pin.pin) && before.circuit === pin.circuit);
		if (!same) return pin;
		const { wire: _wire, gauge: _gauge, note: _note, ...beyond } = same;
		return { ...beyond, ...pin };
	});
	return halves.with(at, { ...old, ...half, pins });
}

export const findHalf = (halves: readonly PlugHalf[], plug: string, half: HalfName): number =>
	halves.findIndex(one => one.half === half && one.plug.trim().toLowerCase() === plug.trim().toLowerCase());
