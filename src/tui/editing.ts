import { cellText } from '../plugs/edit/cell.ts';
import { completions } from '../plugs/edit/completions.ts';
import { type Edit, halfOf, pinOf, startEdit } from '../plugs/edit/edit.ts';
import { facing } from '../plugs/edit/facing.ts';
import type { PlugHalf } from '../sheet/plugs.ts';
import { typable } from '../text/sanitize.ts';
import type { App } from './app.ts';
import { dispatch } from './asking.ts';
import { lineEditor, textOf } from './line-editor.ts';
import { type Line, lines } from './text.ts';

const none: readonly PlugHalf[] = [];

/** The plugs under edit; opened on the sheet's own where they are not yet. */
export const editOf = ({ pins, interview }: App): Edit => pins?.edit ?? startEdit(interview!.sheet.plugs ?? none);

/** After a change or a move: what changed is saved, and no cell is open. */
export function withEdit(app: App, edit: Edit): App {
	const next = edit.halves === editOf(app).halves ? app : dispatch(app, { do: 'plugs', plugs: edit.halves });
	return { ...next, pins: { edit, offered: [] }, taking: 'answer', field: lineEditor(), notice: null };
}

/** A cell open for typing, with a text in it. */
export const withCell = (app: App, text: string, offered: readonly string[] = []): App => ({
	...app,
	taking: 'cell',
	field: lineEditor(typable(text)),
	pins: { edit: { ...editOf(app), said: null }, offered },
});

/** What the last change came to. */
export const saidLines = (app: App, width: number): Line[] => {
	const { said } = editOf(app);
	return said ? lines(said.text, width, said.kind === 'problem' ? 'odd' : 'good').slice(0, 3) : [];
};

/** The open cell's text with the caret in it. */
export function withCaret({ field }: App): string {
	return `${field.characters.slice(0, field.caret).join('')}_${field.characters.slice(field.caret).join('')}`;
}

/** What a circuit that stands unrecognized in its cell may be. */
export function offersFor(app: App): readonly string[] {
	const edit = editOf(app);
	const { vocabulary } = app.model.rulebook;
	if (app.taking === 'cell') return edit.column === 'circuit' ? completions(vocabulary, textOf(app.field)) : [];
	if (!halfOf(edit)) return [];
	const is = facing(edit.halves, edit.half, vocabulary).rows[edit.row]?.pin.recognized.is;
	return is === 'strange' || is === 'unclear' ? completions(vocabulary, cellText(pinOf(edit), 'circuit')) : [];
}
