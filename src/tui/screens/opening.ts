import type { App, Effect } from '../app.ts';
import type { Frame } from '../frame.ts';
import { type Binding, listKeys } from '../keymap.ts';
import { lineEditor, textOf } from '../line-editor.ts';
import { clip, line, lines } from '../text.ts';

const extra = ['A new build', 'The demo build, to look around'] as const;
const count = (app: App) => (app.taking === 'name' ? 0 : app.found.length + extra.length);

export const bindings: readonly Binding[] = [
	{ keys: ['enter'], shown: 'Enter', label: 'open', run: open },
	{
		keys: ['ctrl-b', 'escape'],
		shown: '^B',
		label: 'back',
		when: app => app.taking === 'name',
		run: app => ({ ...app, taking: 'answer', field: lineEditor() }),
	},
	...listKeys(count),
];

function open(app: App): App {
	const asking = (effect: Effect): App => ({ ...app, effects: [...app.effects, effect] });
	if (app.taking === 'name') {
		const name = textOf(app.field).trim();
		return name === '' ? app : asking({ do: 'create', name });
	}
	const sheet = app.found[app.cursor];
	if (sheet) return asking({ do: 'open', path: sheet.path });
	if (app.cursor === app.found.length) return { ...app, taking: 'name', field: lineEditor(), told: null };
	return asking({ do: 'open', path: 'demo' });
}

/** The sheets there are, a new one, the demo build. */
export function view(app: App, width: number): Frame {
	const sheets = app.found.map(({ name, told }) => clip(`${name}  ${told}`, width - 2));
	const naming = app.taking === 'name';
	const typed = `${textOf(app.field)}_`;
	return {
		top: [
			line('swap-audit', 'title'),
			...lines('What does not fit, what is not connected, what gives out first, and in which order.', width, 'quiet'),
			line(''),
		],
		rows: naming ? null : { items: [...sheets, ...extra], cursor: app.cursor },
		bottom: [
			...(app.told ? lines(app.told, width, 'bad') : []),
			...(naming ? [line(clip(`Name of the build: ${typed}`, width), 'field')] : []),
		],
		panel: [],
		footer: [],
	};
}
