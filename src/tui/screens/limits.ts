import { limitWords } from '../../wording/as-fine-as-band.ts';
import type { App } from '../app.ts';
import type { Frame } from '../frame.ts';
import { type Binding, scrollKeys } from '../keymap.ts';
import { clip, type Line, line } from '../text.ts';

export const bindings: readonly Binding[] = [
	{ keys: ['ctrl-b', 'escape', 'enter'], shown: '^B', label: 'back', run: app => ({ ...app, screen: 'audit' }) },
	...scrollKeys(),
];

/** The ladder as bars, lowest first. */
export function view(app: App, width: number): Frame {
	const { audit, wording } = app.assessment!;
	const placed = audit.limits.filter(({ value }) => value !== null);
	const most = Math.max(...placed.map(({ value }) => value!), 1);
	const bars = placed.flatMap((rung): Line[] => {
		const { limit, title, value } = rung;
		const words = limitWords(wording, limit, { ...rung, value: value! });
		return [
			line(clip(`${title}: ${words}`, width)),
			line('#'.repeat(Math.max(1, Math.round((value! / most) * (width - 2)))), 'quiet'),
		];
	});
	const fitted = audit.fit?.applied ? [line(`Fitted to the log of ${audit.fit.days.join(', ')}.`, 'quiet')] : [];
	const rest = audit.limits
		.filter(({ value }) => value === null)
		.map(({ title }) => line(clip(`not placed: ${title}`, width), 'quiet'));
	const nothing = bars.length + rest.length === 0 ? [line('No limits on this build yet.')] : [];
	return {
		top: [line('What gives out first', 'title'), ...fitted, ...bars, ...rest, ...nothing],
		scroll: app.scroll,
		rows: null,
		bottom: [],
		panel: [],
		footer: [],
	};
}
