import { leave } from '../interview/session.ts';
import { typable } from '../text/sanitize.ts';
import { type App, dispatch, type Screen } from './app.ts';
import { type Frame, mainWidth, pageOf as pageIn } from './frame.ts';
import { type Binding, bindingFor, footer, scrollKeys } from './keymap.ts';
import type { Key } from './keys.ts';
import { erase, eraseBack, insert, move, textOf } from './line-editor.ts';
import { aboutHalf, aboutPin } from './screens/about.ts';
import * as audit from './screens/audit.ts';
import * as build from './screens/build.ts';
import * as changed from './screens/changed.ts';
import * as end from './screens/end.ts';
import * as finding from './screens/finding.ts';
import * as limits from './screens/limits.ts';
import * as logAnswers from './screens/log-answers.ts';
import * as logChannel from './screens/log-channel.ts';
import * as logColumns from './screens/log-columns.ts';
import * as logFile from './screens/log-file.ts';
import * as logFound from './screens/log-found.ts';
import * as logReading from './screens/log-reading.ts';
import * as opening from './screens/opening.ts';
import * as pins from './screens/pins.ts';
import * as plugs from './screens/plugs.ts';
import * as question from './screens/question.ts';
import * as review from './screens/review.ts';
import * as sections from './screens/sections.ts';
import * as tonight from './screens/tonight.ts';
import * as touched from './screens/touched.ts';
import { clip, type Line, line, lines } from './text.ts';

interface Drawn {
	readonly bindings: readonly Binding[];
	/** `whole` is the width of the window, `width` that of the column beside the pane, if the screen has one. */
	view(app: App, width: number, whole: number): Frame;
	/** A screen that takes keys of its own, what is typed among them; null leaves a key to the field. */
	press?(app: App, key: Key): App | null;
	/** What is half typed on it put where it belongs, before it is left. */
	settle?(app: App): App;
}

const screens: Readonly<Record<Screen, Drawn>> = {
	opening,
	build,
	question,
	sections,
	review,
	touched,
	changed,
	end,
	audit,
	finding,
	limits,
	tonight,
	logFile,
	logColumns,
	logChannel,
	logReading,
	logFound,
	logAnswers,
	plugs,
	pins,
	'about-half': aboutHalf,
	'about-pin': aboutPin,
};

/** The key that tells all keys; a question mark only where it is not typed. */
const help: Binding = {
	keys: ['text:?', 'f1'],
	shown: '?',
	label: 'all keys',
	when: app => !typing(app) || app.field.characters.length === 0,
	run: app => ({ ...app, open: 'keys', scroll: 0 }),
};
const helpWhileTyping: Binding = { ...help, keys: ['f1'], shown: 'F1', when: app => !help.when!(app) };

/** Keys that every screen knows. */
const everywhere: readonly Binding[] = [
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
function typing({ screen, taking }: App): boolean {
	return (
		['question', 'review', 'sections', 'logFile'].includes(screen) ||
		taking === 'cell' ||
		(screen === 'opening' && taking === 'name')
	);
}

/** What has to be saved before leaving: the half-typed text, with the question it belongs to. */
export function leaving(app: App): App['effects'] {
	const { interview, field, screen, taking } = screens[app.screen].settle?.(app) ?? app;
	if (!interview) return [];
	const { at, aside } = interview;
	const away = aside?.id === at ? (aside?.text ?? '') : '';
	const half = screen !== 'question' ? away : taking === 'answer' ? textOf(field) : '';
	return [{ do: 'save', sheet: leave(interview, half) }];
}

/** Bindings of the screen in sight; while the keys are told, what moves in that. */
const bindingsOf = (app: App): readonly Binding[] =>
	app.open === 'keys' ? scrollKeys() : [...screens[app.screen].bindings, help, helpWhileTyping, ...everywhere];

/** The app after a key. Pure. */
export function reduce(before: App, key: Key): App {
	const app = key.key.startsWith('page-') ? { ...before, page: pageOf(before) } : before;
	const binding = bindingFor(bindingsOf(app), key, app);
	if (binding) return binding.run(app);
	// Any other key closes the list of keys; the one that leaves also leaves.
	if (app.open === 'keys') return key.key === 'ctrl-c' ? reduce({ ...app, open: null }, key) : { ...app, open: null };
	if (key.key === 'background')
		return { ...app, appearance: { ...app.appearance, background: key.light ? 'light' : 'dark' } };
	const taken = screens[app.screen].press?.(app, key);
	if (taken) return taken;
	if (!typing(app)) return app;
	const edited = edit(app, key);
	// What is typed over a list finds a question in it.
	if (app.screen === 'review' || app.screen === 'sections') return found(app, edited);
	// What is being typed anew is in doubt no more, and what was wrong with it is past.
	return edited.field !== app.field && app.screen === 'question' && app.interview && app.taking === 'answer'
		? dispatch(edited, { do: 'retype' })
		: edited;
}

/** The list of questions by what was typed; from the sections it is the list of all. */
function found(app: App, edited: App): App {
	if (edited.field === app.field) return edited;
	return { ...edited, screen: 'review', show: app.screen === 'sections' ? 'all' : app.show, cursor: 0 };
}

function edit(app: App, key: Key): App {
	switch (key.key) {
		case 'text':
		case 'paste': {
			const field = insert(app.field, typable(key.text));
			return { ...app, field };
		}
		case 'backspace':
			return { ...app, field: erase(app.field, 'before') };
		case 'delete':
			return { ...app, field: erase(app.field, 'under') };
		case 'left':
		case 'right':
		case 'home':
		case 'end':
			return { ...app, field: move(app.field, key.key) };
		case 'ctrl-u':
			return { ...app, field: eraseBack(app.field, 'line') };
		case 'ctrl-w':
			return { ...app, field: eraseBack(app.field, 'word') };
		case 'ctrl-d':
			return { ...app, effects: [...app.effects, ...leaving(app), { do: 'quit' }] };
		default:
			return app;
	}
}

/** How far a page is: what is in sight of the list or the text, less a line that stays in sight. */
function pageOf(app: App): number {
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

/** Screens with a second pane in a wide window. */
const paned: readonly Screen[] = ['question', 'review', 'audit'];

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
	const { bindings, view } = screens[app.screen];
	const last = help.when!(app) ? help : helpWhileTyping;
	if (app.open !== 'keys') {
		const frame = view(app, paned.includes(app.screen) ? mainWidth(width + 1) : width, width);
		return {
			...frame,
			bottom: [...alertLines(app, width), ...frame.bottom],
			footer: [line(footer([...bindings, ...everywhere], last, app, width), 'quiet')],
		};
	}
	const shown = [...bindings, ...everywhere, last].filter(({ when }) => when?.(app) ?? true);
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
