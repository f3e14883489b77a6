import { asked } from '../../interview/queue.ts';
import { isAnswered } from '../../interview/state.ts';
import type { App } from '../app.ts';
import { arrive, dispatch } from '../asking.ts';
import type { Frame } from '../frame.ts';
import { type Binding, listKeys } from '../keymap.ts';
import { clip, line, lines } from '../text.ts';
import { toPlugs } from './plugs.ts';

const count = (app: App) => app.model.rulebook.sections.length;
/** Behind the sections come the plugs, pin by pin. */
const atPlugs = (app: App) => app.cursor === count(app);
const leave = (app: App): App => arrive({ ...app, screen: 'question' });

export const typed = true;

export const bindings: readonly Binding[] = [
	{
		keys: ['enter'],
		shown: 'Enter',
		label: 'go there',
		when: app => !atPlugs(app),
		run: app => leave(dispatch(app, { do: 'section', section: app.model.rulebook.sections[app.cursor]!.id })),
	},
	{ keys: ['enter'], shown: 'Enter', label: 'pin by pin', when: atPlugs, run: toPlugs },
	{ keys: ['ctrl-b', 'escape'], shown: '^B', label: 'back', run: leave },
	...listKeys(app => count(app) + 1),
];

/** The sections, with how much of each is answered. */
export function view(app: App, width: number): Frame {
	const state = { ...app.interview!, section: null };
	const all = asked(state);
	const items = app.model.rulebook.sections.map(({ id, title, words }) => {
		const own = all.filter(({ section }) => section === id);
		const done = own.filter(question => isAnswered(state, question)).length;
		return clip(`${title} (${done} of ${own.length})  ${words}`, width - 2);
	});
	const here = app.model.rulebook.sections[app.cursor];
	return {
		top: [line('Go to', 'title')],
		rows: { items: [...items, clip(plugsRow(app), width - 2)], cursor: app.cursor },
		bottom: [
			...lines(here ? `${here.title}: ${here.words}` : plugsWords, width, 'quiet').slice(0, 2),
			line('Or type a name or a number: _', 'field'),
		],
		panel: [],
		footer: [],
	};
}

const plugsWords = 'Two halves of a plug, pin by pin: what each wire carries, and what it meets.';

function plugsRow({ interview }: App): string {
	const plugs = interview!.sheet.plugs ?? [];
	const pins = plugs.reduce((sum, half) => sum + half.pins.length, 0);
	return `Plugs (${plugs.length} ${plugs.length === 1 ? 'half' : 'halves'}, ${pins} pins)  ${plugsWords}`;
}
