import { changeCounts, changeLines } from '../../interview/changes.ts';
import type { App } from '../app.ts';
import type { Frame } from '../frame.ts';
import { type Binding, listKeys } from '../keymap.ts';
import { clip, line, lines } from '../text.ts';

const rows = ({ assessment }: App): string[] => (assessment ? changeLines(assessment) : []);
const count = (app: App) => rows(app).length;

export const bindings: readonly Binding[] = [
	{
		keys: ['enter', 'ctrl-b', 'escape'],
		shown: 'Enter',
		label: 'the audit',
		run: app => ({ ...app, screen: 'audit', cursor: 0 }),
	},
	...listKeys(count),
];

/** What changed since the audit that this one is compared with. */
export function view(app: App, width: number): Frame {
	const items = rows(app).map(text => clip(text, width - 2));
	const date = app.assessment?.audit.since?.date ?? 'last time';
	return {
		top: [
			line(clip(`What changed since ${date}`, width), 'title'),
			...(app.assessment ? lines(changeCounts(app.assessment), width) : []),
		],
		rows: items.length > 0 ? { items, cursor: Math.min(app.cursor, items.length - 1) } : null,
		bottom: app.notice ? lines(app.notice, width, 'quiet') : [],
		panel: [],
		footer: [],
	};
}
