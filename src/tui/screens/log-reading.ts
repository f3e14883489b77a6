import type { App } from '../app.ts';
import type { Frame } from '../frame.ts';
import type { Binding } from '../keymap.ts';
import { clip, joined, line } from '../text.ts';
import { bar } from '../theme.ts';

export const bindings: readonly Binding[] = [
	{
		keys: ['escape', 'ctrl-b'],
		shown: 'Esc',
		label: 'stop reading',
		run: app => ({ ...app, screen: 'logColumns', cursor: 0, effects: [...app.effects, { do: 'stop-log' }] }),
	},
];

/** How far a log is read. */
export function view(app: App, width: number): Frame {
	const { path, share } = app.log!;
	const length = Math.max(8, Math.min(40, width - 8));
	return {
		top: [
			line(clip(`Reading ${path}`, width), 'title'),
			joined(
				{ text: bar(share ?? 0, length, app.appearance), look: 'good' },
				{ text: share === null ? '' : ` ${Math.floor(100 * share)} %`, look: 'quiet' },
			),
		],
		rows: null,
		bottom: [],
		panel: [],
		footer: [],
	};
}
