import type { App } from './app.ts';
import type { Key } from './keys.ts';

/** One thing a key does on a screen. The footer and the help are made from the same table that handles the keys. */
export interface Binding {
	/** Key names, or a character after `text:`. */
	readonly keys: readonly string[];
	/** As shown in the footer: `^F`, `Enter`. */
	readonly shown: string;
	readonly label: string;
	readonly when?: (app: App) => boolean;
	readonly run: (app: App) => App;
	/** Told in the help only. */
	readonly minor?: boolean;
	/** Told in the footer of a wide window only, and in the help. */
	readonly wide?: boolean;
}

export const nameOf = (key: Key): string => (key.key === 'text' ? `text:${key.text}` : key.key);

/** The binding for a key, if the screen has one now. */
export function bindingFor(bindings: readonly Binding[], key: Key, app: App): Binding | undefined {
	const name = nameOf(key);
	return bindings.find(({ keys, when }) => keys.includes(name) && (when?.(app) ?? true));
}

/** A key and what it does, in one piece: spaces that a line is not broken at. */
export const keyWords = ({ shown, label }: Binding): string => `${shown} ${label}`.replaceAll(' ', '\u00a0');

/** Windows of fewer columns are told the keys that one cannot do without, and the one that tells the rest. */
const narrow = 60;

/** The footer's text: what the keys do now. */
export function footer(bindings: readonly Binding[], app: App, width: number): string {
	return bindings
		.filter(({ minor, wide, when }) => !minor && !(wide && width < narrow) && (when?.(app) ?? true))
		.map(keyWords)
		.join('\u00a0 ');
}

/** Moves a cursor in a list, staying inside. */
export const moved = (cursor: number, by: number, count: number): number =>
	Math.max(0, Math.min(count - 1, cursor + by));

/** The keys that go up and down, and how far. */
const strides = [
	['up', 'Up', -1],
	['down', 'Down', 1],
	['page-up', 'PgUp', -8],
	['page-down', 'PgDn', 8],
] as const;

/** Up, down and the page keys of a list with `count` rows. */
export const listKeys = (count: (app: App) => number): Binding[] =>
	strides.map(([key, shown, by]) => ({
		keys: [key],
		shown,
		label: by < 0 ? 'up the list' : 'down the list',
		minor: true,
		when: app => count(app) > 0,
		run: app => ({ ...app, cursor: moved(app.cursor, by, count(app)) }),
	}));

/** The page keys alone, for a text beside a list. */
export const pageKeys = (when: (app: App) => boolean): Binding[] =>
	scrollKeys(when).filter(({ keys }) => keys[0]!.startsWith('page-'));

/** The same keys where a page of text is read that may be longer than the window. */
export const scrollKeys = (when: (app: App) => boolean = () => true): Binding[] =>
	strides.map(([key, shown, by]) => ({
		keys: [key],
		shown,
		label: by < 0 ? 'back up the page' : 'on down the page',
		minor: true,
		when,
		run: app => ({ ...app, scroll: Math.max(0, Math.min(200, app.scroll + by)) }),
	}));
