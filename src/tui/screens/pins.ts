import { cellText } from '../../plugs/edit/cell.ts';
import { completions } from '../../plugs/edit/completions.ts';
import {
	at,
	type Edit,
	halfOf,
	nameHere,
	onward,
	pinOf,
	pinsOf,
	redo,
	refused,
	removed,
	sideways,
	typed,
	undo,
} from '../../plugs/edit/edit.ts';
import { facing } from '../../plugs/edit/facing.ts';
import { withEntry } from '../../plugs/edit/fields.ts';
import { moveWire, paste } from '../../plugs/edit/rows.ts';
import { typable } from '../../text/sanitize.ts';
import type { App } from '../app.ts';
import { editOf, offersFor, withCell, withEdit } from '../editing.ts';
import type { Binding } from '../keymap.ts';
import type { Key } from '../keys.ts';
import { textOf } from '../line-editor.ts';

export { view } from './pins-view.ts';

const inCell = ({ taking }: App) => taking === 'cell';
const notInCell = (app: App) => !inCell(app);

/** What is half typed, into its cell; what the cell does not take stays open. */
export function settle(app: App): App {
	if (!inCell(app)) return app;
	const edit = typed(editOf(app), textOf(app.field));
	return edit.said?.kind === 'problem' ? { ...app, pins: { edit, offered: [] } } : withEdit(app, edit);
}

/** Keeps what is typed, then goes on from there; a cell that does not take it keeps the cursor. */
const thenTo = (go: (edit: Edit) => Edit) => (app: App) => {
	const next = settle(app);
	return inCell(next) ? next : withEdit(next, go(editOf(next)));
};

/** A move that begins with what the row's pin is; where none is, that is said. */
const withPin = (go: (edit: Edit) => Edit) =>
	thenTo(edit => (pinOf(edit) ? go(edit) : refused(edit, 'No pin is here.')));

const rows = (by: (app: App) => number) => (app: App) => thenTo(edit => at(edit, { row: edit.row + by(app) }))(app);

/** TAB in a circuit: the first that it may become, then the next. */
function complete(app: App): App {
	const text = inCell(app) ? textOf(app.field) : cellText(pinOf(editOf(app)), 'circuit');
	const before = app.pins?.offered ?? [];
	const place = before.indexOf(text);
	const offered = place >= 0 ? before : completions(app.model.rulebook.vocabulary, text);
	if (offered.length === 0) return app;
	return withCell(app, offered[(place + 1) % offered.length]!, offered);
}

const completes = (app: App): boolean => {
	const { column } = editOf(app);
	return column === 'circuit' && (inCell(app) ? app.field.characters.length > 0 : offersFor(app).length > 0);
};

/** The wire where the other half has its circuit. */
function toItsPin(app: App): App {
	const edit = editOf(app);
	const to = halfOf(edit) && facing(edit.halves, edit.half, app.model.rulebook.vocabulary).rows[edit.row]?.elsewhere;
	return withEdit(app, to ? moveWire(edit, to) : refused(edit, 'The other half has this circuit at no other pin.'));
}

const joined = (edit: Edit): Edit => withEntry(edit, 'pin', 'joined', pinOf(edit)!.joined ? undefined : true);

export const bindings: readonly Binding[] = [
	{ keys: ['tab'], shown: 'Tab', label: 'completes', when: completes, run: complete },
	{ keys: ['enter', 'tab'], shown: 'Enter', label: 'next cell', run: thenTo(onward) },
	{ keys: ['ctrl-u'], shown: '^U', label: 'undo', when: notInCell, run: app => withEdit(app, undo(editOf(app))) },
	{
		keys: ['ctrl-b', 'escape'],
		shown: '^B',
		label: 'back',
		when: notInCell,
		run: app => ({ ...app, screen: 'plugs', cursor: editOf(app).half }),
	},
	{
		keys: ['escape'],
		shown: 'Esc',
		label: 'leave as it was',
		when: inCell,
		run: app => withEdit(app, { ...editOf(app), said: null }),
	},
	{
		keys: ['ctrl-e'],
		shown: '^E',
		label: 'more about the pin',
		when: notInCell,
		run: app => (pinOf(editOf(app)) ? { ...app, screen: 'about-pin', cursor: 0 } : app),
	},
	{ keys: ['ctrl-y'], shown: '^Y', label: 'joined, or not', minor: true, when: notInCell, run: withPin(joined) },
	{ keys: ['ctrl-v'], shown: '^V', label: 'the wire moved to its pin', minor: true, when: notInCell, run: toItsPin },
	{
		keys: ['ctrl-x'],
		shown: '^X',
		label: 'pin out of the table',
		minor: true,
		when: notInCell,
		run: app => withEdit(app, removed(editOf(app))),
	},
	{
		keys: ['delete'],
		shown: 'Del',
		label: 'empty the cell',
		minor: true,
		when: notInCell,
		run: withPin(edit =>
			edit.column === 'pin' ? refused(edit, '^X takes the pin out of the table.') : typed(edit, ''),
		),
	},
	{
		keys: ['ctrl-r'],
		shown: '^R',
		label: 'redo',
		minor: true,
		when: notInCell,
		run: app => withEdit(app, redo(editOf(app))),
	},
	{ keys: ['shift-tab'], shown: 'S-Tab', label: 'cell before', minor: true, run: thenTo(edit => sideways(edit, -1)) },
	{
		keys: ['left'],
		shown: 'Left',
		label: 'cell before',
		minor: true,
		when: notInCell,
		run: thenTo(edit => sideways(edit, -1)),
	},
	{
		keys: ['right'],
		shown: 'Right',
		label: 'cell behind',
		minor: true,
		when: notInCell,
		run: thenTo(edit => sideways(edit, 1)),
	},
	{ keys: ['up'], shown: 'Up', label: 'pin above', minor: true, run: rows(() => -1) },
	{ keys: ['down'], shown: 'Down', label: 'pin below', minor: true, run: rows(() => 1) },
	{ keys: ['page-up'], shown: 'PgUp', label: 'a page up', minor: true, run: rows(({ page }) => -page) },
	{ keys: ['page-down'], shown: 'PgDn', label: 'a page down', minor: true, run: rows(({ page }) => page) },
	{
		keys: ['home'],
		shown: 'Home',
		label: 'first pin',
		minor: true,
		when: notInCell,
		run: thenTo(edit => at(edit, { row: 0 })),
	},
	{
		keys: ['end'],
		shown: 'End',
		label: 'below the last pin',
		minor: true,
		when: notInCell,
		run: thenTo(edit => at(edit, { row: pinsOf(edit).length })),
	},
];

/** No table that a person pastes is longer, in UTF-16 units. */
const longestPaste = 1_000_000;

/** What is typed opens the cell; a pasted table goes into the rows. */
export function press(app: App, key: Key): App | null {
	if (key.key === 'paste' && /[\n\r\t]/.test(key.text.trim())) {
		if (key.text.length > longestPaste)
			return withEdit(app, refused(editOf(app), 'Nothing was pasted. That is longer than any table of pins.'));
		const text = key.text
			.split(/\r\n?|\n/)
			.map(typable)
			.join('\n');
		return withEdit(app, paste(editOf(app), text));
	}
	if (inCell(app)) return null;
	if (key.key === 'backspace') {
		const edit = editOf(app);
		return withCell(app, edit.column === 'pin' ? nameHere(edit) : cellText(pinOf(edit), edit.column));
	}
	return key.key === 'text' || key.key === 'paste' ? withCell(app, key.text) : null;
}
