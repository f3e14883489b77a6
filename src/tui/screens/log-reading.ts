import type { App } from '../app.ts';
import type { Frame } from '../frame.ts';
import type { Binding } from '../keymap.ts';
import { waiting } from '../waiting.ts';

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
	return waiting(isFitting(app) ? 'Fitting the model to this car' : `Reading ${path}`, share, width, app.appearance);
}
