import type { Vocabulary } from '../plugs/circuit.ts';
import { completions } from '../plugs/edit/completions.ts';
import { at, type Edit, halfOf, pinsOf, redo, refused, removed, startEdit, typed, undo } from '../plugs/edit/edit.ts';
import { conflict, facing } from '../plugs/edit/facing.ts';
import { addHalf, entryWords, halfEntries, pinEntries, withEntry } from '../plugs/edit/fields.ts';
import { readPinLine } from '../plugs/edit/pasted.ts';
import { merged, moveWire } from '../plugs/edit/rows.ts';
import { pinName } from '../plugs/half.ts';
import { pinWords } from '../plugs/remedy.ts';
import { halfNames, type PlugHalf } from '../sheet/plugs.ts';

/** The plugs by lines at one moment. */
export interface PlugLines {
	readonly edit: Edit;
	/** Whether a half is open; else one is chosen. */
	readonly open: boolean;
	/** What the last circuit that was not recognized may be, and the pin that has it. */
	readonly offered: { readonly pin: string; readonly titles: readonly string[] } | null;
	/** What a line came to, to be said. */
	readonly say: readonly string[];
}

/** Before the first line about plugs. */
export const startPlugLines = (plugs: readonly PlugHalf[]): PlugLines => ({
	edit: startEdit(plugs),
	open: false,
	offered: null,
	say: [],
});

const halfHelp =
	'A line is a pin: its name, the wire, the circuit, as 14 green/white coolant temperature; empty for a cavity without a terminal. =1 takes the first name offered. list; out PIN; done PIN; move PIN TO; set PIN KEY VALUE or set KEY VALUE, keys as in the sheet; undo; redo; end.';
const listHelp = 'A number opens a half. A name and whose half it is begins one, as: engine to dash; car. undo; end.';

/** The prompt: which half is open, or which there are. */
export function plugPrompt({ edit, open }: PlugLines): string[] {
	const half = halfOf(edit);
	if (open && half) return [`[pins] ${half.plug}, the ${half.half}'s half: pin, wire, circuit - or ?, end`];
	const rows = edit.halves.map(
		({ plug, half, pins }, index) => `  ${index + 1} ${plug}, the ${half}'s half, ${pins.length} pins`,
	);
	return ['[plugs] Which half? A number, or as: engine to dash; car - or ?, end', ...rows];
}

/** After a line; null: it was the end of them. */
export function plugLine(now: PlugLines, line: string, vocabulary: Vocabulary): PlugLines | null {
	const word = line.trim().toLowerCase();
	const after = (edit: Edit, more: Partial<PlugLines> = {}): PlugLines => ({
		...now,
		offered: null,
		edit: { ...edit, said: null },
		say: edit.said ? [edit.said.text] : [],
		...more,
	});
	if (word === '?' || word === 'help')
		return after(now.edit, { say: [now.open ? halfHelp : listHelp], offered: now.offered });
	if (word === '') return after(now.edit, { offered: now.offered });
	if (word === 'undo') return after(undo(now.edit), { say: ['Taken back.'], ...said(undo(now.edit)) });
	if (word === 'redo') return after(redo(now.edit), { say: ['Made again.'], ...said(redo(now.edit)) });
	if (word === 'end' || word === '<') return now.open ? after(now.edit, { open: false }) : null;
	return now.open && halfOf(now.edit) ? inHalf(now, line.trim(), vocabulary, after) : inList(now, line.trim(), after);
}

const said = ({ said }: Edit): { readonly say?: readonly string[] } => (said ? { say: [said.text] } : {});

type After = (edit: Edit, more?: Partial<PlugLines>) => PlugLines;

function inList({ edit }: PlugLines, line: string, after: After): PlugLines {
	if (/^\d+$/.test(line)) {
		const half = Number(line) - 1;
		return edit.halves[half]
			? after(at(edit, { half, row: 0 }), { open: true })
			: after(refused(edit, `There is no half ${line}.`));
	}
	const [plug = '', whose = '', ...rest] = line.split(/[;,]/).map(part => part.trim());
	const half = halfNames.find(name => name === whose.toLowerCase());
	if (plug === '' || !half || rest.length > 0)
		return after(
			refused(edit, 'Accepted: a number, or a name and engine, car or controller, as: engine to dash; car.'),
		);
	const made = addHalf(edit);
	// Named before it is checked: what it was proposed as may be there already.
	const named = withEntry(withEntry(made, 'half', 'plug', plug), 'half', 'half', half);
	const one = named.said ? refused(edit, named.said.text) : { ...named, past: [...edit.past, made.past.at(-1)!] };
	return after(one, { open: !named.said });
}

function inHalf(now: PlugLines, line: string, vocabulary: Vocabulary, after: After): PlugLines {
	const { edit, offered } = now;
	const [word = '', first = '', second = '', ...more] = line.split(/\s+/);
	const on = (name: string, go: (edit: Edit) => Edit): PlugLines => {
		const row = pinsOf(edit).findIndex(({ pin }) => pinName(pin) === pinName(name));
		if (row < 0) return after(refused(edit, `This half lists no pin ${name}.`));
		const next = go(at(edit, { row }));
		return after(next, next.said || !pinsOf(next)[row] ? {} : { say: [rowWords(next, row, vocabulary)] });
	};
	if (/^=\d+$/.test(line)) {
		const title = offered?.titles[Number(line.slice(1)) - 1];
		if (!offered || title === undefined) return after(refused(edit, 'Nothing of that number was offered.'));
		return on(offered.pin, one => typed({ ...one, column: 'circuit' }, title));
	}
	switch (word.toLowerCase()) {
		case 'list':
			return after(edit, { say: pinsOf(edit).map((_, row) => rowWords(edit, row, vocabulary)) });
		case 'out':
			return on(first, removed);
		case 'done':
			return on(first, one => withEntry(one, 'pin', 'joined', true));
		case 'move':
			return on(first, one => (second === '' ? refused(one, 'To which pin? As: move 14 22.') : moveWire(one, second)));
		case 'set': {
			const key = halfEntries(edit).find(entry => entry.key === first);
			if (key) return after(withWords(edit, 'half', first, [second, ...more].join(' ')));
			return on(first, one => withWords(one, 'pin', second, more.join(' ')));
		}
		default:
			return entered(after, edit, line, vocabulary);
	}
}

/** A value in words, of a half or of a pin. */
function withWords(edit: Edit, of: 'half' | 'pin', key: string, words: string): Edit {
	const entries = of === 'half' ? halfEntries(edit) : pinEntries(edit);
	const entry = entries.find(one => one.key === key);
	if (!entry)
		return refused(
			edit,
			`Accepted: set ${of === 'pin' ? 'PIN ' : ''}KEY VALUE, a key of ${entries.map(one => one.key).join(', ')}.`,
		);
	const value = entry.choices.find(choice => entryWords({ value: choice }) === words.toLowerCase());
	return withEntry(edit, of, key, entry.choices.length > 0 && value !== undefined ? value : words);
}

/** A pin that was typed: how it was read, and what comes of it. */
function entered(after: After, edit: Edit, line: string, vocabulary: Vocabulary): PlugLines {
	const pin = readPinLine(line);
	if ('accepted' in pin) return after(refused(edit, `Accepted: ${pin.accepted}.`));
	const next = merged(edit, [pin]);
	if (next.said?.kind === 'problem') return after(next);
	const row = pinsOf(next).findIndex(one => pinName(one.pin) === pinName(pin.pin));
	const beside = facing(next.halves, next.half, vocabulary).rows[row]!;
	const strange = beside.pin.recognized.is === 'strange' || beside.pin.recognized.is === 'unclear';
	const titles =
		strange && beside.pin.raw.sort === undefined ? completions(vocabulary, beside.pin.raw.circuit ?? '') : [];
	const offers = strange
		? [
				`Not recognized${titles.length > 0 ? `; nearest: ${titles.map((title, index) => `=${index + 1} ${title}`).join(', ')}` : ''}.`,
			]
		: [];
	return after(next, {
		say: [rowWords(next, row, vocabulary), ...offers],
		offered: titles.length > 0 ? { pin: pin.pin, titles } : null,
	});
}

/** A pin, what it meets, and what comes of that, in a line. */
function rowWords(edit: Edit, row: number, vocabulary: Vocabulary): string {
	const { half, mate, rows } = facing(edit.halves, edit.half, vocabulary);
	const beside = rows[row]!;
	const plain = (of: typeof beside.pin, whose: typeof half) => pinWords(of, whose).replace(/^[^:]*: /, '');
	const meets =
		mate && beside.other ? ` Meets ${mate.half} ${beside.other.raw.pin.trim()}: ${plain(beside.other, mate)}.` : '';
	const bad = conflict(beside);
	const why = bad?.bad
		? ` ${bad.word.toUpperCase()}: ${beside.met!.why}`
		: bad && beside.elsewhere
			? ` It is at pin ${beside.elsewhere} there.`
			: '';
	return `${beside.pin.raw.pin.trim()}: ${plain(beside.pin, half)}.${meets}${why}`;
}
