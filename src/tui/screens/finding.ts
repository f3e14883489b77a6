import type { App } from '../app.ts';
import { findingLines } from '../finding-lines.ts';
import type { Frame } from '../frame.ts';
import { type Binding, scrollKeys } from '../keymap.ts';
import { line } from '../text.ts';
import { isTicked, tick } from '../ticks.ts';
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
	{
		keys: ['text: '],
		shown: 'Space',
		label: 'tick',
		run: app => tick(app, listed(app)[app.cursor]!, listed(app)),
	},
	...scrollKeys(),
];

/** One finding whole: why, what to do, how to prove it, what is missing or assumed. */
export function view(app: App, width: number): Frame {
	const finding = listed(app)[app.cursor]!;
	const [title, ...text] = findingLines(app, finding, width);
	return {
		top: [title!, ...(isTicked(app, finding) ? [line('ticked as done', 'good')] : []), ...text],
		scroll: app.scroll,
		rows: null,
		bottom: [],
		panel: [],
		footer: [],
	};
}
