import { leave } from '../interview/session.ts';
import type { App } from './app.ts';
import type { Effect } from './effect.ts';
import type { Binding } from './keymap.ts';
import { textOf } from './line-editor.ts';
import { screens } from './screens.ts';

/** The key that lists all keys; a question mark only where it is not typed. */
export const help: Binding = {
	keys: ['text:?', 'f1'],
	shown: '?',
	label: 'all keys',
	when: app => !typing(app) || app.field.characters.length === 0,
	run: app => ({ ...app, open: 'keys', scroll: 0 }),
};
export const helpWhileTyping: Binding = { ...help, keys: ['f1'], shown: 'F1', when: app => !help.when!(app) };

/** Keys that every screen knows. */
export const globalKeys: readonly Binding[] = [
	{
		keys: ['ctrl-c', 'ctrl-q'],
		shown: '^Q',
		label: 'save and leave',
		run: app => ({ ...app, effects: [...app.effects, ...leaving(app), { do: 'quit' }] }),
	},
	{
		keys: ['ctrl-k'],
		shown: '^K',
		label: 'seen',
		minor: true,
		when: ({ alert }) => alert?.kind === 'fork',
		run: app => ({ ...app, alert: null }),
	},
	{
		keys: ['ctrl-z'],
		shown: '^Z',
		label: 'stop for now; fg goes on',
		minor: true,
		run: app => ({ ...app, effects: [...app.effects, { do: 'suspend' }] }),
	},
];

/** Whether characters go into the field. */
export function typing({ screen, taking }: App): boolean {
	return screens[screen].typed === true || taking === 'cell' || (screen === 'opening' && taking === 'name');
}

/** What has to be saved before leaving: the half-typed text, with the question it belongs to. */
export function leaving(app: App): readonly Effect[] {
	const { interview, field, screen, taking } = screens[app.screen].settle?.(app) ?? app;
	if (!interview) return [];
	const { at, aside } = interview;
	const away = aside?.id === at ? (aside?.text ?? '') : '';
	const half = screen !== 'question' ? away : taking === 'answer' ? textOf(field) : '';
	return [{ do: 'save', sheet: leave(interview, half) }];
}
