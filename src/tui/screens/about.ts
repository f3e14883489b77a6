import { at, type Edit, halfOf, nameHere } from '../../plugs/edit/edit.ts';
import { type Entry, entryWords, halfEntries, nextChoice, pinEntries, withEntry } from '../../plugs/edit/fields.ts';
import type { App } from '../app.ts';
import { editOf, saidLines, withCaret, withCell, withEdit } from '../editing.ts';
import type { Frame } from '../frame.ts';
import { type Binding, listKeys } from '../keymap.ts';
import type { Key } from '../keys.ts';
import { textOf } from '../line-editor.ts';
import { clip, line, lines } from '../text.ts';

/** A screen of everything that can be said of a half, or of a pin beyond its row: chosen by a key, or typed. */
function about(of: 'half' | 'pin') {
	const entries = (app: App): Entry[] => (of === 'half' ? halfEntries(editOf(app)) : pinEntries(editOf(app)));
	const here = (app: App): Entry => entries(app)[app.cursor]!;
	const chosen = (app: App) => app.taking !== 'cell' && here(app).choices.length > 0;
	const kept = (app: App, edit: Edit): App => ({ ...withEdit(app, edit), cursor: app.cursor });
	const turned = (by: 1 | -1) => (app: App) =>
		kept(app, withEntry(editOf(app), of, here(app).key, nextChoice(here(app), by)));
	/** What is half typed, into its entry. */
	const settle = (app: App): App =>
		app.taking === 'cell' ? kept(app, withEntry(editOf(app), of, here(app).key, textOf(app.field))) : app;
	/** Done with it, unless what was typed cannot be taken. */
	const left = (app: App): App => {
		const next = settle(app);
		return editOf(next).said?.kind === 'problem' ? next : toPins(next);
	};

	const bindings: readonly Binding[] = [
		{ keys: ['enter'], shown: 'Enter', label: 'keep', when: app => app.taking === 'cell', run: settle },
		{ keys: ['right', 'text: '], shown: 'Right', label: 'next choice', when: chosen, run: turned(1) },
		{ keys: ['left'], shown: 'Left', label: 'choice before', minor: true, when: chosen, run: turned(-1) },
		{
			keys: ['enter', 'ctrl-b', 'escape'],
			shown: 'Enter',
			label: 'to the pins',
			when: app => app.taking !== 'cell',
			run: left,
		},
		{
			keys: ['escape'],
			shown: 'Esc',
			label: 'leave as it was',
			when: app => app.taking === 'cell',
			run: app => kept(app, editOf(app)),
		},
		{
			keys: ['delete'],
			shown: 'Del',
			label: 'say nothing',
			minor: true,
			when: app => app.taking !== 'cell',
			run: app => kept(app, withEntry(editOf(app), of, here(app).key, undefined)),
		},
		...listKeys(app => entries(app).length).map(binding => ({
			...binding,
			run: (app: App) => binding.run(settle(app)),
		})),
	];

	function press(app: App, key: Key): App | null {
		if (app.taking === 'cell' || here(app).choices.length > 0) return null;
		if (key.key === 'backspace') return withCell(app, entryWords(here(app)));
		return key.key === 'text' || key.key === 'paste' ? withCell(app, key.text) : null;
	}

	function view(app: App, width: number): Frame {
		const edit = editOf(app);
		const wide = 18;
		const items = entries(app).map((entry, index) => {
			const typed = app.taking === 'cell' && index === app.cursor;
			const value = typed ? withCaret(app) : entryWords(entry) || '-';
			return clip(`${clip(entry.label, wide).padEnd(wide)} ${value}`, width - 2);
		});
		const half = halfOf(edit);
		const title =
			of === 'half'
				? `About ${half?.plug}, the ${half?.half}'s half`
				: `About pin ${nameHere(edit)}, the ${half?.half}'s half of ${half?.plug}`;
		const { choices, words } = here(app);
		const how = `${words} ${choices.length > 0 ? `Right goes through: ${choices.map(value => entryWords({ value }) || 'not said').join(', ')}.` : 'Type it.'}`;
		return {
			top: [line(clip(title, width), 'title')],
			rows: { items, cursor: app.cursor },
			bottom: [...lines(how, width, 'quiet').slice(0, 3), ...saidLines(app, width)],
			panel: [],
			footer: [],
		};
	}

	return { bindings, press, settle, view };
}

/** To the table, at the pin that it was left at. */
const toPins = (app: App): App => ({ ...withEdit(app, at(editOf(app), {})), screen: 'pins', cursor: 0 });

export const aboutHalf = about('half');
export const aboutPin = about('pin');
