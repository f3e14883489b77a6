import { asked } from '../../interview/queue.ts';
import { isAnswered } from '../../interview/state.ts';
import { type App, arrive, tell } from '../app.ts';
import type { Frame } from '../frame.ts';
import { type Binding, listKeys } from '../keymap.ts';
import { clip, line, lines } from '../text.ts';

const count = (app: App) => app.model.rulebook.sections.length;
const leave = (app: App): App => arrive({ ...app, screen: 'question' });

export const bindings: readonly Binding[] = [
	{
		keys: ['enter'],
		shown: 'Enter',
		label: 'go there',
		run: app => leave(tell(app, { do: 'section', section: app.model.rulebook.sections[app.cursor]!.id })),
	},
	{ keys: ['ctrl-b', 'escape'], shown: '^B', label: 'back', run: leave },
	...listKeys(count),
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
	const here = app.model.rulebook.sections[app.cursor]!;
	return {
		top: [line('Go to', 'title')],
		rows: { items, cursor: app.cursor },
		bottom: [
			...lines(`${here.title}: ${here.words}`, width, 'quiet').slice(0, 2),
			line('Or type a name or a number: _', 'field'),
		],
		panel: [],
		footer: [],
	};
}
