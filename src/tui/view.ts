import type { App } from './app.ts';
import { type Frame, mainWidth, pageIn } from './frame.ts';
import { globalKeys, help, helpWhileTyping, typing } from './global-keys.ts';
import { type Binding, footer } from './keymap.ts';
import { screens } from './screens.ts';
import { clip, type Line, line, lines } from './text.ts';

/** How far a page is: what is in sight of the list or the text, less a line that stays in sight. */
export function pageOf(app: App): number {
	const { columns, rows } = app.window;
	return pageIn(frameOf(app, columns - 1), rows);
}

/** The keys with what they do, in two columns where there is room. */
function columns(bindings: readonly Binding[], width: number): Line[] {
	const words = bindings.map(({ shown, label }) => `${shown.padEnd(5)} ${label}`);
	const wide = Math.max(...words.map(text => text.length)) + 2;
	const rows = 2 * wide > width ? words.length : Math.ceil(words.length / 2);
	return words
		.slice(0, rows)
		.map((text, row) => line(clip(`${text.padEnd(rows < words.length ? wide : 0)}${words[rows + row] ?? ''}`, width)));
}

/** What must not be missed, on every screen. */
function alertLines({ alert }: App, width: number): Line[] {
	if (!alert) return [];
	return lines(
		alert.kind === 'unsaved' ? `NOT SAVED: ${alert.text}` : `ANOTHER FILE: ${alert.text} (^K seen)`,
		width,
		'alert',
	);
}

/** What to draw now. */
export function frameOf(app: App, width: number): Frame {
	const { bindings, view, paned } = screens[app.screen];
	const last = help.when!(app) ? help : helpWhileTyping;
	if (app.open !== 'keys') {
		const frame = view(app, paned ? mainWidth(width + 1) : width, width);
		return {
			...frame,
			bottom: [...alertLines(app, width), ...frame.bottom],
			footer: [line(footer([...bindings, ...globalKeys], last, app, width), 'quiet')],
		};
	}
	const shown = [...bindings, ...globalKeys, last].filter(({ when }) => when?.(app) ?? true);
	const edits = typing(app) ? ['Left, Right, Home, End move in the line; ^W takes a word away, ^U all of it.'] : [];
	return {
		top: [
			line('Keys on this screen', 'title'),
			...columns(shown, width),
			...edits.flatMap(text => lines(text, width, 'quiet')),
		],
		scroll: app.scroll,
		rows: null,
		bottom: alertLines(app, width),
		panel: [],
		footer: [line(clip('Any other key closes this.', width), 'quiet')],
	};
}
