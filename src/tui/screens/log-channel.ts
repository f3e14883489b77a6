import type { Channel } from '../../log/channel.ts';
import type { App } from '../app.ts';
import type { Frame } from '../frame.ts';
import { type Binding, listKeys } from '../keymap.ts';
import { lookAt, withLog } from '../log-steps.ts';
import { clip, line, lines } from '../text.ts';

const headerOf = ({ log }: App): string => log!.found!.columns[log!.column]!.header;
const unused = 'none of these: leave it alone';
const unitless = 'as its header and values say';

/** The channels to choose from, then the units of the one that was chosen. */
const items = ({ model, log }: App): readonly string[] =>
	log!.channel ? [unitless, ...log!.channel.units] : [unused, ...model.rulebook.channels.map(({ title }) => title)];

const count = (app: App) => items(app).length;

export const bindings: readonly Binding[] = [
	{ keys: ['enter'], shown: 'Enter', label: 'this it is', run: choose },
	{
		keys: ['ctrl-b', 'escape'],
		shown: '^B',
		label: 'as it was',
		run: app => ({ ...app, screen: 'logColumns', cursor: app.log!.column, notice: null }),
	},
	...listKeys(count),
];

function choose(app: App): App {
	const { log, cursor, model } = app;
	const header = headerOf(app);
	const { path, choices, channel } = log!;
	const mappings = choices.mappings.filter(one => one.header !== header);
	const ignored = choices.ignored.filter(one => one !== header);
	if (channel) {
		const unit = cursor === 0 ? null : channel.units[cursor - 1]!;
		const others = mappings.filter(one => one.channel !== channel.id);
		return lookAt(app, path, { mappings: [...others, { channel: channel.id, header, unit }], ignored });
	}
	if (cursor === 0) return lookAt(app, path, { mappings, ignored: [...ignored, header] });
	return withLog({ ...app, cursor: 0 }, { channel: model.rulebook.channels[cursor - 1] as Channel });
}

/** Which channel a column is, and in which unit. */
export function view(app: App, width: number): Frame {
	const { channel, found, column } = app.log!;
	const { header, first } = found!.columns[column]!;
	const asked = channel ? `Which unit is ${channel.title} in?` : 'What is it?';
	return {
		top: [
			line(clip(header, width), 'title'),
			...lines(`First values: ${first.join('; ') || 'none'}. ${asked}`, width, 'quiet'),
		],
		rows: { items: items(app).map(text => clip(text, width - 2)), cursor: app.cursor },
		bottom: app.notice ? lines(app.notice, width, 'odd') : [],
		panel: [],
		footer: [],
	};
}
