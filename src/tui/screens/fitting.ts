import type { App } from '../app.ts';
import type { Frame } from '../frame.ts';
import { withoutFit } from '../judging.ts';
import type { Binding } from '../keymap.ts';
import { waiting } from '../waiting.ts';

export const bindings: readonly Binding[] = [
	{ keys: ['escape', 'ctrl-b'], shown: 'Esc', label: 'go on without the fit', run: withoutFit },
];

/** How far the model is fitted to the logs that the sheet keeps, before its audit. */
export const view = (app: App, width: number): Frame =>
	waiting('Fitting the model to this car', app.fitting?.share ?? 0, width, app.appearance);
