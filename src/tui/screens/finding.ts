import type { App } from '../app.ts';
import type { Frame } from '../frame.ts';
import { type Binding, scrollKeys } from '../keymap.ts';
import { lines } from '../text.ts';
import { listed } from './audit.ts';

export const bindings: readonly Binding[] = [
	{
		keys: ['ctrl-b', 'escape', 'enter'],
		shown: '^B',
		label: 'back to the list',
		run: app => ({ ...app, screen: 'audit' }),
	},
	{
		keys: ['right', 'tab'],
		shown: 'Right',
		label: 'next',
		run: app => ({ ...app, scroll: 0, cursor: Math.min(listed(app).length - 1, app.cursor + 1) }),
	},
	{
		keys: ['left', 'shift-tab'],
		shown: 'Left',
		label: 'the one before',
		run: app => ({ ...app, scroll: 0, cursor: Math.max(0, app.cursor - 1) }),
	},
	...scrollKeys(),
];

/** One finding whole: why, what to do, how to prove it, what is missing or assumed. */
export function view(app: App, width: number): Frame {
	const finding = listed(app)[app.cursor]!;
	const part = (name: string, text: string) => (text ? lines(`${name}: ${text}`, width, 'plain', '  ') : []);
	const fails = finding.verdict === 'fails';
	const { questions, cautions } = app.model.rulebook;
	const asked = questions.filter(({ id }) => finding.missing.includes(id)).map(({ ask }) => ask);
	const warned = cautions.filter(({ id }) => finding.cautions.includes(id)).map(({ title }) => title);
	const taken = finding.assumed.map(id => id.slice(id.indexOf('.') + 1).replaceAll('_', ' '));
	return {
		top: [
			...lines(`${fails ? '!' : '?'} ${finding.title}`, width, 'title'),
			...(fails
				? finding.do.flatMap(text => lines(`- ${text}`, width, 'plain', '  '))
				: part('Needs', asked.join(' '))),
			...part('Why', finding.why),
			...part('Done when', finding.prove),
			...part('Usual values for', taken.join(', ')),
			...part('Caution', warned.join('; ')),
			...part('Source', finding.source),
		],
		scroll: app.scroll,
		rows: null,
		bottom: [],
		panel: [],
		footer: [],
	};
}
