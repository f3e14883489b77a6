import { type Field, halfFields, pinFields } from '../../sheet/plug-fields.ts';
import type { Pin, PlugHalf } from '../../sheet/plugs.ts';
import { changed, type Edit, halfOf, pinOf, refused, withPins } from './edit.ts';

/** One thing that can be said of a half or of a pin: chosen of a few, or typed. */
export interface Entry {
	readonly key: string;
	readonly label: string;
	/** What it means, in a sentence. */
	readonly words: string;
	/** In the order in which a key goes through them; undefined is "not said". Empty: it is typed. */
	readonly choices: readonly unknown[];
	readonly value: unknown;
}

const halfLabels: Readonly<Record<string, readonly [label: string, words: string]>> = {
	plug: ['plug', 'Its name, the same on both halves where they mate.'],
	half: ['half', 'Whose half it is: the harness of the engine, that of the car, or the controller itself.'],
	mates: ['meets', 'The plug that it meets, where that has another name.'],
	mates_by: ['joined by', 'Pin by pin where the shells mate; by circuit where they are cut off and spliced.'],
	from: ['from', 'Where the table is from: year, vehicle, page.'],
	view: ['pins read at', 'The face, where the halves touch, or the side of the wires: the one is the other mirrored.'],
	keyed: ['shells', 'Whether they go together by themselves.'],
	lock: ['lock', 'What holds the halves together.'],
	outside: ['outside the cabin', 'Whether water gets at it.'],
};

const pinLabels: Readonly<Record<string, readonly [label: string, words: string]>> = {
	joined: ['joined already', 'It is done, and drops out of the plan.'],
	fed_here: ['fed from here', 'Whether this half is the live one. Not said: the worst way round is taken.'],
	sort: ['carries', 'For a circuit that is not recognized: what it carries, so that what it meets can be judged.'],
	meets: ['meets pin', 'The pin of the other half, where the two are numbered differently.'],
	known: ['known by', 'Metered, from a diagram, or a guess.'],
	splice: ['splice', 'A name: pins with the same one are joined in one splice.'],
	terminal: ['blade, mm', 'Width of the terminal: a wire does not move into a cavity of another size.'],
	fused: ['fuse, A', 'The fuse in this feed; link for a fusible link, none for none.'],
	class: ['insulation', 'Temperature class as printed on the wire: ISO 6722 A to D, or SAE J1128.'],
	twisted: ['twisted', 'Whether it is twisted with the other wire of its pair.'],
	seal: ['sealed', 'A seal on the wire, or a plug in the empty cavity.'],
	grounded_at: ['shield grounded', 'Of a shield: at which of its ends.'],
};

/** Everything that can be said of the half in sight, the pins apart. */
export const halfEntries = (edit: Edit): Entry[] => entries(halfLabels, halfFields, halfOf(edit));
/** Everything beyond the table that can be said of the pin under the cursor. */
export const pinEntries = (edit: Edit): Entry[] => entries(pinLabels, pinFields, pinOf(edit));

const entries = (
	labels: Readonly<Record<string, readonly [label: string, words: string]>>,
	fields: Readonly<Record<string, Field>>,
	of: Pin | PlugHalf | undefined,
): Entry[] =>
	Object.entries(labels).map(([key, [label, words]]) => ({
		key,
		label,
		words,
		choices: choicesOf(fields[key]!, key === 'half'),
		value: (of as Record<string, unknown> | undefined)?.[key],
	}));

function choicesOf({ schema }: Field, needed: boolean): readonly unknown[] {
	const own = schema.type === 'boolean' ? [true, false] : Array.isArray(schema.enum) ? schema.enum : [];
	return own.length === 0 || needed ? own : [undefined, ...own];
}

/** The value that follows in an entry's choices. */
export function nextChoice({ choices, value }: Entry, by: 1 | -1): unknown {
	const count = choices.length;
	return choices[(choices.indexOf(value) + by + count) % count];
}

/** An entry's value in words. */
export const entryWords = ({ value }: Pick<Entry, 'value'>): string =>
	value === undefined ? '' : value === true ? 'yes' : value === false ? 'no' : String(value);

/** Another value of an entry of the half, or of the pin; undefined says nothing. A typed text is read as the entry takes it. */
export function withEntry(edit: Edit, of: 'half' | 'pin', key: string, value: unknown): Edit {
	const field = (of === 'half' ? halfFields : pinFields)[key]!;
	const read = typeof value === 'string' ? textValue(value, key) : value;
	if (read !== undefined && !field.fits(read)) return refused(edit, `Accepted: ${field.accepted}.`);
	const own = of === 'half' ? halfOf(edit) : pinOf(edit);
	if (!own) return refused(edit, 'No pin is here.');
	const { [key as keyof typeof own]: _, ...rest } = own;
	const next = read === undefined ? rest : { ...own, [key]: read };
	if (of === 'half') return changed(edit, edit.halves.with(edit.half, next as PlugHalf));
	return withPins(edit, halfOf(edit)!.pins.with(edit.row, next as Pin));
}

function textValue(text: string, key: string): unknown {
	const plain = text.replace(/\s+/g, ' ').trim();
	if (plain === '') return undefined;
	if (key === 'fused' && /^(no|none|not fused)$/i.test(plain)) return false;
	const number =
		key === 'terminal' || key === 'fused' ? Number(plain.replace(',', '.').replace(/\s*(mm|A)$/i, '')) : Number.NaN;
	return Number.isFinite(number) ? number : plain;
}

/** A half more: the other one of the first plug that has one alone, else of a new plug. */
export function addHalf(edit: Edit): Edit {
	const { halves } = edit;
	const alone = halves.find(({ plug, half }) => halves.every(other => other.half === half || other.plug !== plug));
	const half: PlugHalf = alone
		? { plug: alone.plug, half: alone.half === 'car' ? 'engine' : 'car', pins: [] }
		: { plug: freeName(halves), half: 'engine', pins: [] };
	return changed(edit, [...halves, half], { half: halves.length, row: 0, column: 'pin' });
}

function freeName(halves: readonly PlugHalf[]): string {
	const taken = new Set(halves.map(({ plug }) => plug.trim().toLowerCase()));
	for (let number = 1; ; number++) if (!taken.has(`plug ${number}`)) return `plug ${number}`;
}

/** The half in sight out of the sheet, with its pins. */
export function removeHalf(edit: Edit): Edit {
	const half = halfOf(edit);
	if (!half) return refused(edit, 'No half is here.');
	return changed(
		edit,
		edit.halves.toSpliced(edit.half, 1),
		{ row: 0 },
		`The ${half.half}'s half of ${half.plug.trim()} is out of the sheet. Undo brings it back.`,
	);
}
