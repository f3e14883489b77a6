import { type Column, cellText } from '../../plugs/edit/cell.ts';
import { type Edit, halfOf, nameHere, pinsOf } from '../../plugs/edit/edit.ts';
import { conflict, type Facing, type FacingHalf, facing } from '../../plugs/edit/facing.ts';
import { pinWords } from '../../plugs/remedy.ts';
import { sanitize } from '../../text/sanitize.ts';
import { widthOf } from '../../text/wrap.ts';
import type { App } from '../app.ts';
import { editOf, offersFor, saidLines, withCaret } from '../editing.ts';
import type { Frame } from '../frame.ts';
import { clip, type Line, type Look, line, lines } from '../text.ts';

type Shown = Column | 'other' | 'mark';
type Layout = readonly (readonly [column: Shown, width: number])[];

/** Under this there is room for one column beside the pin's name. */
const narrow = 60;
/** From this on for all of them. */
const wide = 110;

/** Which columns are in sight, and how wide; that of the cursor always is. */
function layoutFor(width: number, column: Column): Layout {
	const mark = ['mark', 6] as const;
	if (width < narrow) return [['pin', 5], [column === 'pin' ? 'circuit' : column, width - 17], mark];
	const room = width - 2 - 5 - 6;
	const gauge = ['gauge', 8] as const;
	if (width >= wide) {
		const rest = room - 7 - 8 - 16;
		const [circuit, other] = [Math.floor(rest * 0.38), Math.floor(rest * 0.38)];
		return [
			['pin', 5],
			['wire', 16],
			['circuit', circuit],
			gauge,
			['note', rest - circuit - other],
			['other', other],
			mark,
		];
	}
	const [wire, rest] = [13, room - 13 - 5];
	const circuit = Math.ceil(rest * 0.55);
	const last = column === 'gauge' || column === 'note' ? column : 'other';
	return [['pin', 5], ['wire', wire], ['circuit', circuit], [last, rest - circuit], mark];
}

/** A text of exactly a width. */
function filled(text: string, width: number): string {
	const short = clip(text, width);
	return short + ' '.repeat(Math.max(0, width - widthOf(short)));
}

/** Cells beside each other, the one under the cursor in brackets. */
function row(cells: readonly string[], here: number): string {
	const edges = cells.map((cell, at) => `${at === here ? '[' : at > 0 && at - 1 === here ? ']' : ' '}${cell}`);
	return edges.join('') + (here === cells.length - 1 ? ']' : '');
}

/** One half, a pin a row, with what it meets beside it. */
export function view(app: App, width: number): Frame {
	const edit = editOf(app);
	const half = halfOf(edit);
	if (!half) return { top: [line('Plugs', 'title')], rows: null, bottom: [], panel: [], footer: [] };
	const found = facing(edit.halves, edit.half, app.model.rulebook.vocabulary);
	const layout = layoutFor(width, edit.column);
	const cells = (index: number) =>
		layout.map(([column, size]) => {
			const open = app.taking === 'cell' && index === edit.row && column === edit.column;
			return open ? tail(withCaret(app), size) : filled(shownIn(column, index, edit, found), size);
		});
	const here = layout.findIndex(([column]) => column === edit.column);
	const indexes = Array.from({ length: pinsOf(edit).length + 1 }, (_, index) => index);
	return {
		top: [
			line(clip(titleOf(found, width), width), 'title'),
			line(
				clip(
					`  ${row(
						layout.map(([column, size]) => filled(header(column, found), size)),
						-2,
					)}`,
					width,
				),
				'quiet',
			),
		],
		rows: {
			items: indexes.map(index => row(cells(index), index === edit.row ? here : -2).trimEnd()),
			looks: indexes.map(index => lookOf(found.rows[index])),
			cursor: edit.row,
		},
		bottom: [...below(app, edit, found, width), ...saidLines(app, width)],
		panel: [],
		footer: [],
	};
}

/** The end of what is typed, where the caret mostly is. */
function tail(text: string, size: number): string {
	const shown = sanitize(text);
	if (widthOf(shown) <= size) return filled(shown, size);
	const letters = [...shown];
	while (widthOf(letters.join('')) > size - 2) letters.shift();
	return filled(`..${letters.join('')}`, size);
}

const header = (column: Shown, { mate }: FacingHalf): string =>
	column === 'other' ? (mate ? `on the ${mate.half}'s half` : '') : column === 'mark' ? '' : column;

function titleOf({ half, mate, by }: FacingHalf, width: number): string {
	const name = `${half.plug}: ${half.half}'s half, ${half.pins.length} pins`;
	if (width < narrow) return name;
	const meets =
		mate === null
			? 'its other half is not given'
			: by === 'circuit'
				? `spliced to the ${mate.half}'s half`
				: `meets the ${mate.half}'s half`;
	return `${name}; ${meets}`;
}

function shownIn(column: Shown, index: number, edit: Edit, { rows }: FacingHalf): string {
	const pin = pinsOf(edit)[index];
	const facingRow = rows[index];
	if (column === 'pin') return pin ? pin.pin : index === edit.row ? nameHere(edit) : '';
	if (column === 'mark' && !pin) return index === edit.row ? 'new' : '';
	if (column === 'mark') return (facingRow && (conflict(facingRow)?.word ?? (pin?.joined ? 'joined' : ''))) ?? '';
	if (column === 'other') return facingRow?.other ? otherWords(facingRow.other) : '';
	return cellText(pin, column);
}

const otherWords = (other: NonNullable<Facing['other']>): string =>
	[other.raw.wire?.trim(), other.circuit?.title ?? other.raw.circuit?.trim() ?? '?'].filter(Boolean).join(' ') || '?';

function lookOf(facingRow: Facing | undefined): Look {
	return (facingRow && conflict(facingRow)?.bad) ?? 'plain';
}

/** What is known of the pin under the cursor: what it is taken for, what it meets, and what comes of that. */
function below(app: App, edit: Edit, found: FacingHalf, width: number): Line[] {
	const some = (text: string, look: Look = 'plain'): Line[] =>
		width < narrow ? [line(clip(text, width), look)] : lines(text, width, look).slice(0, 2);
	const { mirrored } = found;
	const facingRow = found.rows[edit.row];
	const offers = offersFor(app);
	const tab = offers.length > 0 ? [line(clip(`Tab: ${offers.join(' | ')}`, width), 'quiet')] : [];
	const wrong = mirrored
		? some(`Read from the wrong side? With ${mirrored.how}, ${mirrored.agree} pins agree, now ${mirrored.now}.`, 'odd')
		: [];
	if (app.taking === 'cell') return [...wrong, line(clip(`${edit.column}: ${withCaret(app)}`, width), 'field'), ...tab];
	if (!facingRow) return [...wrong, ...notListed(found).flatMap(text => some(text, 'quiet'))];
	const bad = conflict(facingRow);
	const why = facingRow.met?.why
		? `: ${facingRow.met.why}${facingRow.met.ifLive ? ' (if either wire is live)' : ''}`
		: '';
	return [
		...wrong,
		...some(
			`${offers.length === 0 ? '' : width < narrow ? 'Not recognized. ' : 'Not recognized (^E: say what it carries). '}${meeting(facingRow, found)}`,
		),
		...tab,
		...(bad && why !== '' ? some(`${bad.word === '?' ? 'not known' : bad.word}${why}`, bad.bad ?? 'plain') : []),
	];
}

/** What touches a pin, and what its own words are taken for. */
function meeting({ pin, other }: Facing, { mate, by }: FacingHalf): string {
	const own = pin.circuit && pin.raw.circuit?.trim().toLowerCase() !== pin.circuit.title.toLowerCase();
	const taken = own ? ` Taken for ${pin.circuit!.title}.` : '';
	if (mate === null) return taken.trim();
	if (!other)
		return `${by === 'pin' ? `The ${mate.half}'s half lists no such pin.` : `Not on the ${mate.half}'s half.`}${taken}`;
	const words = pinWords(other, mate).replace(/^[^:]*: /, '');
	return `${by === 'pin' ? 'Meets' : 'Splices to'} ${mate.half} ${other.raw.pin.trim()}: ${words}.${taken}`;
}

/** Pins of the other half that this one does not list. */
function notListed({ half, mate, rows, by }: FacingHalf): string[] {
	if (mate === null || by === 'circuit') return [];
	const met = new Set(rows.map(({ other }) => other));
	const own = new Set(half.pins.map(({ pin }) => pin));
	const rest = mate.pins.filter(pin => !met.has(pin) && !own.has(pin.pin)).map(({ raw }) => raw.pin.trim());
	return rest.length > 0 ? [`On the ${mate.half}'s half and not listed here: ${rest.join(', ')}.`] : [];
}
