import { gaugeText } from '../sheet/check-plugs.ts';
import type { HalfName, Pin, PlugHalf } from '../sheet/plugs.ts';
import { BadTable, shownCell } from '../table/problem.ts';
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

const lineOf = (problem: string): number => Number(/line (\d+)/.exec(problem)?.[1] ?? 0);

function readRow({ line, cells }: SmallRow): { readonly pin?: Pin; readonly problem?: string } {
	const { pin = '', wire = '', circuit = '', gauge = '', note = '' } = cells;
	const refuse = (found: string, accepted: string) => ({
		problem: `line ${line}: found ${found}; accepted: ${accepted}`,
	});
	if (pin === '') return refuse('no pin', 'a pin in each row, like 14 or A7');
	if ([pin, wire, circuit].some(({ length }) => length > 200))
		return refuse('a cell over 200 characters', 'shorter ones');
	const size = gauge === '' ? null : gaugeText(gauge);
	if (gauge !== '' && size === null)
		return refuse(`the gauge ${shownCell(gauge)}`, 'a gauge in AWG, or a size like 0.75 mm2');
	return {
		pin: {
			pin,
			...(wire === '' ? {} : { wire }),
			circuit,
			...(size === null ? {} : { gauge: size.unit === 'AWG' ? size.value : `${size.value} ${size.unit}` }),
			...(note === '' ? {} : { note: note.slice(0, 1000) }),
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
		return same ? { ...same, ...pin } : pin;
	});
	return halves.with(at, { ...old, ...half, pins });
}

export const findHalf = (halves: readonly PlugHalf[], plug: string, half: HalfName): number =>
	halves.findIndex(one => one.half === half && one.plug.trim().toLowerCase() === plug.trim().toLowerCase());
