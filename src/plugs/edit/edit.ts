import { plugProblems } from '../../sheet/check-plugs.ts';
import type { Pin, PlugHalf } from '../../sheet/plugs.ts';
import { pinName } from '../half.ts';
import { type Column, columns, nameAfter, withCell } from './cell.ts';

/** The halves of a sheet while they are edited, and where the cursor is among them. Only the functions below make the next. */
export interface Edit {
	readonly halves: readonly PlugHalf[];
	/** The half in sight. */
	readonly half: number;
	/** The pin; as many as there are pins: the row below them, for a new one. */
	readonly row: number;
	readonly column: Column;
	readonly past: readonly Moment[];
	readonly future: readonly Moment[];
	readonly said: { readonly kind: 'notice' | 'problem'; readonly text: string } | null;
}

/** Where the cursor is: the half, the row of a pin, the column. */
export type Place = Pick<Edit, 'half' | 'row' | 'column'>;
type Moment = Place & Pick<Edit, 'halves'>;

/** So many changes can be taken back. */
const mostPast = 200;

/** Editing as it begins: at the first pin of the first half. */
export const startEdit = (halves: readonly PlugHalf[]): Edit => ({
	halves,
	half: 0,
	row: 0,
	column: 'pin',
	past: [],
	future: [],
	said: null,
});

/** The half in sight, its pins, and the pin of the cursor; undefined where there is none. */
export const halfOf = ({ halves, half }: Edit): PlugHalf | undefined => halves[half];
export const pinsOf = (edit: Edit): readonly Pin[] => halfOf(edit)?.pins ?? [];
export const pinOf = (edit: Edit): Pin | undefined => pinsOf(edit)[edit.row];

const message = (text: string) => ({ kind: 'notice', text }) as const;
const problem = (text: string) => ({ kind: 'problem', text }) as const;

/** What cannot be done, said; nothing changes. */
export const refused = (edit: Edit, text: string): Edit => ({ ...edit, said: problem(text) });

/** The cursor elsewhere, inside what there is. */
export function at(edit: Edit, place: Partial<Place>): Edit {
	const moved = { ...edit, ...place, said: null };
	const half = within(moved.half, edit.halves.length - 1);
	return { ...moved, half, row: within(moved.row, edit.halves[half]?.pins.length ?? 0) };
}

const within = (wanted: number, most: number): number => Math.max(0, Math.min(wanted, most));

/** The cursor by so many columns, staying in its row. */
export const sideways = (edit: Edit, by: number): Edit =>
	at(edit, { column: columns[within(columns.indexOf(edit.column) + by, columns.length - 1)]! });

/** On to what is entered next: the wire after the pin, the circuit after it, then the pin below. */
export function onward(edit: Edit): Edit {
	if (edit.column === 'pin' || edit.column === 'wire') return sideways(edit, 1);
	return at(edit, edit.column === 'circuit' ? { row: edit.row + 1, column: 'pin' } : { row: edit.row + 1 });
}

/** The name of the pin in the cursor's row; in the row below them all, the one that comes next. */
export function nameHere(edit: Edit): string {
	const pins = pinsOf(edit);
	const own = pins[edit.row]?.pin;
	if (own !== undefined) return own;
	return pins.length === 0 ? '1' : nameAfter(pins.at(-1)!.pin, new Set(pins.map(({ pin }) => pinName(pin))));
}

/** Other halves, unless no sheet could hold them; what was can be taken back. */
export function changed(edit: Edit, halves: readonly PlugHalf[], place: Partial<Place> = {}, words?: string): Edit {
	for (const { path, accepted } of plugProblems(halves))
		return refused(edit, `${path.replace(/^.*\]\.?/, '') || 'plug'}: ${accepted}`);
	const { half, row, column } = edit;
	const past = [...edit.past, { halves: edit.halves, half, row, column }].slice(-mostPast);
	return { ...at({ ...edit, halves, past, future: [] }, place), said: words === undefined ? null : message(words) };
}

/** The half in sight with other pins. */
export function withPins(edit: Edit, pins: readonly Pin[], place: Partial<Place> = {}, words?: string): Edit {
	const half = halfOf(edit);
	return half ? changed(edit, edit.halves.with(edit.half, { ...half, pins }), place, words) : edit;
}

/** A text in the cell under the cursor; below the last row it makes a pin. */
export function typed(edit: Edit, text: string): Edit {
	const pins = pinsOf(edit);
	const own = pins[edit.row];
	const name = nameHere(edit);
	if (!own && text.trim() === '') return edit;
	if (!own && edit.column !== 'pin' && name === '') return refused(edit, 'Which pin is it? Name it first.');
	const made = withCell(own ?? { pin: name }, edit.column, text);
	if ('accepted' in made) return refused(edit, `Accepted: ${made.accepted}.`);
	if (own && JSON.stringify(made) === JSON.stringify(own)) return { ...edit, said: null };
	return withPins(edit, own ? pins.with(edit.row, made) : [...pins, made]);
}

/** The pin out of the table. */
export function removed(edit: Edit): Edit {
	const pin = pinOf(edit);
	if (!pin) return refused(edit, 'No pin is here.');
	return withPins(
		edit,
		pinsOf(edit).toSpliced(edit.row, 1),
		{},
		`Pin ${pin.pin.trim()} is out of the table. Undo brings it back.`,
	);
}

/** The state before the last change, or after the one that was taken back. */
export const undo = (edit: Edit): Edit => step(edit, 'past', 'future', 'Nothing to undo.');
/** The state after the change that was taken back last. */
export const redo = (edit: Edit): Edit => step(edit, 'future', 'past', 'Nothing to redo.');

function step(edit: Edit, from: 'past' | 'future', to: 'past' | 'future', none: string): Edit {
	const moment = edit[from].at(-1);
	if (!moment) return refused(edit, none);
	const { halves, half, row, column } = edit;
	const now = { halves, half, row, column };
	return { ...edit, ...moment, [from]: edit[from].slice(0, -1), [to]: [...edit[to], now], said: null };
}
