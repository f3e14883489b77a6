import type { LogColumn } from '../../log/columns.ts';
import type { App } from '../app.ts';
import type { Frame } from '../frame.ts';
import { type Binding, listKeys } from '../keymap.ts';
import { lineEditor } from '../line-editor.ts';
import { judge, withLog } from '../log-steps.ts';
import { clip, line, lines } from '../text.ts';

const count = (app: App) => app.log?.found?.columns.length ?? 0;

export const bindings: readonly Binding[] = [
	{ keys: ['enter', 'text:r'], shown: 'Enter', label: 'read it whole', run: judge },
	{
		keys: ['text:c', 'right'],
		shown: 'C',
		label: 'change this column',
		run: app => withLog({ ...app, screen: 'logChannel', cursor: 0 }, { column: app.cursor, channel: null }),
	},
	{
		keys: ['ctrl-b', 'escape'],
		shown: '^B',
		label: 'another file',
		run: app => ({ ...app, screen: 'logFile', field: lineEditor(app.log!.path), notice: null }),
	},
	...listKeys(count),
];

const how = { header: '', given: ', as given', asked: ', as given', kept: ', as in the earlier log' } as const;

/** What each column is taken for, with its first values. */
export function view(app: App, width: number): Frame {
	const { found, path } = app.log!;
	const titles = new Map(app.model.rulebook.channels.map(({ id, title }) => [id, title]));
	const row = ({ header, taken, first }: LogColumn): string => {
		const as = taken ? `${titles.get(taken.channel)}, ${taken.unit || 'no unit'}${how[taken.by]}` : 'not used';
		return `${header}: ${as}  (${first.join('; ') || 'empty'})`;
	};
	const columns = found?.columns ?? [];
	return {
		top: [
			line(clip(`The columns of ${path}`, width), 'title'),
			...lines('Is each what it says? Change those that are not.', width, 'quiet'),
		],
		rows: {
			items: columns.map(one => clip(row(one), width - 2)),
			looks: columns.map(({ taken }) => (taken ? 'plain' : 'quiet')),
			cursor: app.cursor,
		},
		help: (found?.notes ?? []).flatMap(note => lines(note, width, 'quiet')),
		scroll: app.scroll,
		bottom: app.notice ? lines(app.notice, width, 'odd') : [],
		panel: [],
		footer: [],
	};
}
