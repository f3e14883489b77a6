import type { App } from '../app.ts';
import type { Frame } from '../frame.ts';
import type { Binding } from '../keymap.ts';
import { clip, joined, line } from '../text.ts';
import { bar } from '../theme.ts';

const isFitting = ({ log }: App): boolean => log?.doing === 'fitting';

const stop = (app: App): App => ({
	...app,
	screen: 'logColumns',
	cursor: 0,
	effects: [...app.effects, { do: 'stop-log' }],
});

export const bindings: readonly Binding[] = [
	{
		keys: ['escape'],
		shown: 'Esc',
		label: 'go on without the fit',
		when: isFitting,
		run: app => ({ ...app, effects: [...app.effects, { do: 'skip-fit' }] }),
	},
	{ keys: ['ctrl-b'], shown: '^B', label: 'the columns', when: isFitting, run: stop },
	{ keys: ['escape', 'ctrl-b'], shown: 'Esc', label: 'stop reading', when: app => !isFitting(app), run: stop },
];

/** How far a log is read, or the model fitted to it. */
export function view(app: App, width: number): Frame {
	const { path, share } = app.log!;
	const length = Math.max(8, Math.min(40, width - 8));
	return {
		top: [
			line(clip(isFitting(app) ? 'Fitting the model to this car' : `Reading ${path}`, width), 'title'),
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
