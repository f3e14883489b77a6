import type { App } from '../app.ts';
import type { Binding } from '../bindings.ts';
import type { Frame } from '../frame.ts';
import { line, lines } from '../text.ts';
import { listed } from './audit.ts';

export const bindings: readonly Binding[] = [
	{
		keys: ['ctrl-b', 'escape', 'enter'],
		shown: '^B',
		label: 'back to the list',
		run: app => ({ ...app, screen: 'audit' }),
	},
	{
		keys: ['down', 'right'],
		shown: 'Down',
		label: 'next',
		run: app => ({ ...app, cursor: Math.min(listed(app).length - 1, app.cursor + 1) }),
	},
	{
		keys: ['up', 'left'],
		shown: 'Up',
		label: 'the one before',
		run: app => ({ ...app, cursor: Math.max(0, app.cursor - 1) }),
	},
];

/** One finding whole: why, what to do, how to prove it, what is missing or assumed. */
export function view(app: App, width: number): Frame {
	const finding = listed(app)[app.cursor]!;
	const part = (name: string, text: string) => (text ? lines(`${name}: ${text}`, width, 'plain', '  ') : []);
	const fails = finding.verdict === 'fails';
	return {
		top: [
			...lines(`${fails ? '!' : '?'} ${finding.title}`, width, 'title'),
			...(fails
				? finding.do.flatMap(text => lines(`- ${text}`, width, 'plain', '  '))
				: part('Needs', finding.missing.join(', '))),
			...part('Why', finding.why),
			...part('Done when', finding.prove),
			...part('Assumed', finding.assumed.join(', ')),
			...part('Caution', finding.cautions.join(', ')),
			...part('Source', finding.source),
			line(''),
		],
		rows: null,
		bottom: [],
		panel: [],
		footer: [],
	};
}
