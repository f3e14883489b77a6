import type { Pin } from '../../sheet/plugs.ts';
import { pinName } from '../half.ts';
import { type Column, withCell } from './cell.ts';
import { changed, type Edit, halfOf, pinOf, pinsOf, refused, withPins } from './edit.ts';
import { readPasted } from './pasted.ts';

/** A pasted text in the half in sight: rows by the names of their pins, or one column from the cursor down. */
export function paste(edit: Edit, text: string): Edit {
	const lines = text.split(/\r\n?|\n/).filter(line => line.trim() !== '');
	if (edit.column !== 'pin' && lines.every(isCell)) return filledDown(edit, lines);
	const read = readPasted(text);
	if ('problem' in read) return refused(edit, `Nothing was pasted. ${read.problem}`);
	return merged(edit, read.pins);
}

/** A line that is one cell, and no pin with its circuit behind it. */
const isCell = (line: string): boolean =>
	!/[\t;|]/.test(line) && !/^\s*[A-Za-z]{0,2}\d{1,3}[A-Za-z]?[\s,:=]/.test(line);

/** The texts below each other from the cursor on, in its column. */
function filledDown(edit: Edit, lines: readonly string[]): Edit {
	const pins = [...pinsOf(edit)];
	for (const [index, line] of lines.entries()) {
		const own = pins[edit.row + index];
		if (!own)
			return refused(
				edit,
				`Nothing was pasted. ${lines.length} lines, ${pins.length - edit.row} pins from here on: name the pins first.`,
			);
		const made = withCell(own, edit.column as Column, line);
		if ('accepted' in made)
			return refused(edit, `Nothing was pasted. ${JSON.stringify(line.slice(0, 40))}; accepted: ${made.accepted}.`);
		pins[edit.row + index] = made;
	}
	return withPins(edit, pins, { row: edit.row + lines.length }, `${lines.length} cells filled.`);
}

/** Pins that a table names take the place of those of the same name; the others stay, new ones come behind. */
export function merged(edit: Edit, read: readonly Pin[]): Edit {
	if (read.length === 0) return refused(edit, 'Nothing was pasted.');
	const byName = new Map<string, Pin[]>();
	for (const pin of read) byName.set(pinName(pin.pin), [...(byName.get(pinName(pin.pin)) ?? []), pin]);
	const before = pinsOf(edit);
	const used = new Set<string>();
	const kept = before.flatMap(pin => {
		const name = pinName(pin.pin);
		const now = byName.get(name);
		if (!now) return [pin];
		if (used.has(name)) return [];
		used.add(name);
		return now.map(one => (one.circuit === pin.circuit ? { ...pin, ...one } : one));
	});
	const added = [...byName].filter(([name]) => !used.has(name)).flatMap(([, pins]) => pins);
	const words = `${read.length} ${read.length === 1 ? 'pin' : 'pins'}: ${added.length} new, ${read.length - added.length} that were there.`;
	return withPins(edit, [...kept, ...added], { row: kept.length + added.length }, words);
}

/** The wire under the cursor, with all that is known of it, at another pin; what was there comes here. */
export function moveWire(edit: Edit, to: string): Edit {
	const pin = pinOf(edit);
	const half = halfOf(edit);
	if (!pin || !half) return refused(edit, 'No pin is here.');
	const target = half.pins.findIndex(other => pinName(other.pin) === pinName(to));
	if (target === edit.row) return refused(edit, 'It is there already.');
	const there = half.pins[target] ?? { pin: to.trim(), circuit: 'empty' };
	const exchanged = [place(pin, there), place(there, pin)] as const;
	const pins = half.pins.with(edit.row, exchanged[1]);
	const all = target < 0 ? [...pins, exchanged[0]] : pins.with(target, exchanged[0]);
	return changed(
		edit,
		edit.halves.with(edit.half, { ...half, pins: all }),
		{},
		`The wire of pin ${pin.pin.trim()} is at pin ${there.pin.trim()} now.`,
	);
}

/** The wire of one pin in the cavity of another: what belongs to the cavity stays with it. */
function place(wire: Pin, cavity: Pin): Pin {
	const { pin: _pin, meets: _meets, seal: _seal, ...carried } = wire;
	const { pin, meets, seal } = cavity;
	return { pin, ...carried, ...(meets === undefined ? {} : { meets }), ...(seal === undefined ? {} : { seal }) };
}
