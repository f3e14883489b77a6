import type { App } from '../app.ts';
import type { Frame } from '../frame.ts';
import type { Binding } from '../keymap.ts';
import { textOf } from '../line-editor.ts';
import { leaveLog, lookAt } from '../log-steps.ts';
import { clip, line, lines } from '../text.ts';

const pathIn = (app: App): string => textOf(app.field).trim();

export const typed = true;

export const bindings: readonly Binding[] = [
	{
		keys: ['enter'],
		shown: 'Enter',
		label: 'look at it',
		when: app => pathIn(app) !== '',
		run: app => lookAt(app, pathIn(app), app.log!.choices),
	},
	{
		keys: ['tab'],
		shown: 'Tab',
		label: 'complete the name',
		run: app => ({ ...app, effects: [...app.effects, { do: 'offer-paths', begun: textOf(app.field) }] }),
	},
	{ keys: ['ctrl-b', 'escape'], shown: '^B', label: 'back', run: leaveLog },
];

/** Which file the log is. */
export function view(app: App, width: number): Frame {
	const { offers } = app.log!;
	return {
		top: [
			line(clip(`Read a log of ${app.interview!.sheet.name}`, width), 'title'),
			...lines(
				'A table of numbers as text, plain or gzip, from whatever logger you have. A pull needs a closed road or rollers, and a second person.',
				width,
				'quiet',
			),
		],
		rows: null,
		help: offers.map(offer => line(clip(offer, width), 'quiet')),
		scroll: 0,
		bottom: [
			...(app.notice ? lines(app.notice, width, 'odd') : []),
			line(clip(`File: ${textOf(app.field)}_`, width), 'field'),
		],
		panel: [],
		footer: [],
	};
}
