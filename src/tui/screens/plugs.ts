import { at, type Edit, redo, undo } from '../../plugs/edit/edit.ts';
import { conflict, facing } from '../../plugs/edit/facing.ts';
import { addHalf, removeHalf } from '../../plugs/edit/fields.ts';
import type { App, Screen } from '../app.ts';
import { editOf, saidLines, withEdit } from '../editing.ts';
import type { Frame } from '../frame.ts';
import { type Binding, listKeys } from '../keymap.ts';
import { clip, line, lines } from '../text.ts';

const count = (app: App) => editOf(app).halves.length;
const onHalf = (app: App) => app.cursor < count(app);
const here = (app: App): Edit => at(editOf(app), { half: app.cursor, row: 0 });

/** The halves of the sheet, to choose one. */
export const toPlugs = (app: App): App => ({
	...withEdit({ ...app, pins: null }, editOf({ ...app, pins: null })),
	screen: 'plugs',
	cursor: 0,
});

const goTo = (app: App, edit: Edit, screen: Screen): App => ({ ...withEdit(app, edit), screen, cursor: 0 });
const opened = (app: App): App =>
	onHalf(app)
		? goTo(app, { ...here(app), column: here(app).halves[app.cursor]!.pins.length === 0 ? 'pin' : 'circuit' }, 'pins')
		: goTo(app, addHalf(editOf(app)), 'about-half');

/** The list after a change, with the cursor on what is there. */
const listed = (app: App, edit: Edit): App => {
	const next = withEdit(app, edit);
	return { ...next, cursor: Math.min(app.cursor, edit.halves.length) };
};

export const bindings: readonly Binding[] = [
	{ keys: ['enter'], shown: 'Enter', label: 'its pins', when: onHalf, run: opened },
	{ keys: ['enter'], shown: 'Enter', label: 'a half more', when: app => !onHalf(app), run: opened },
	{ keys: ['ctrl-e'], shown: '^E', label: 'about it', when: onHalf, run: app => goTo(app, here(app), 'about-half') },
	{
		keys: ['ctrl-b', 'escape'],
		shown: '^B',
		label: 'back',
		run: app => ({ ...app, screen: 'sections', cursor: app.model.rulebook.sections.length }),
	},
	{
		keys: ['ctrl-x'],
		shown: '^X',
		label: 'out of the sheet',
		when: onHalf,
		minor: true,
		run: app => listed(app, removeHalf(here(app))),
	},
	{ keys: ['ctrl-u'], shown: '^U', label: 'undo', minor: true, run: app => listed(app, undo(editOf(app))) },
	{ keys: ['ctrl-r'], shown: '^R', label: 'redo', minor: true, run: app => listed(app, redo(editOf(app))) },
	...listKeys(app => count(app) + 1),
];

/** How many pins, and how many of them must not meet what they meet. */
function words(app: App, index: number): string {
	const { halves } = editOf(app);
	const { half, mate, rows } = facing(halves, index, app.model.rulebook.vocabulary);
	const found = rows.map(row => conflict(row)?.word);
	const of = (word: string) => {
		const number = found.filter(one => one === word).length;
		return number > 0 ? [`${word} ${number}`] : [];
	};
	const meets = mate ? `meets the ${mate.half}'s half` : 'its other half is not given';
	const pins = half.pins.length;
	return `${half.plug}: ${half.half}'s half, ${pins} ${pins === 1 ? 'pin' : 'pins'}, ${[meets, ...of('burns'), ...of('kills'), ...of('wrong')].join(', ')}`;
}

/** Every half of a plug in the sheet. */
export function view(app: App, width: number): Frame {
	const items = editOf(app).halves.map((_, index) => clip(words(app, index), width - 2));
	return {
		top: [
			line('Plugs', 'title'),
			...lines('Two halves of a plug, pin by pin: what each wire carries, and what it meets.', width, 'quiet'),
		],
		rows: { items: [...items, 'A half more'], cursor: app.cursor },
		bottom: saidLines(app, width),
		panel: [],
		footer: [],
	};
}
