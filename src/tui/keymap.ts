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
	/** Listed in the help only. The others are in the footer, the first of them first. */
	readonly minor?: boolean;
}

export const nameOf = (key: Key): string => (key.key === 'text' ? `text:${key.text}` : key.key);

const applies = (app: App) => (binding: Binding) => binding.when?.(app) ?? true;

/** The binding for a key, if the screen has one now. */
export function bindingFor(bindings: readonly Binding[], key: Key, app: App): Binding | undefined {
	const name = nameOf(key);
	return bindings.filter(applies(app)).find(({ keys }) => keys.includes(name));
}

/** So many keys are shown on the last line, and the one that lists them all. */
const inFooter = 4;

/** The footer's one line: what the first keys do now, as many as there is room for, and `last`, which lists the rest. */
export function footer(bindings: readonly Binding[], last: Binding, app: App, width: number): string {
	const words = ({ shown, label }: Binding) => `${shown} ${label}`;
	const shown: string[] = [];
	let room = width - words(last).length;
	for (const binding of bindings.filter(applies(app)).filter(({ minor }) => !minor)) {
		const needed = words(binding).length + 2;
		if (shown.length === inFooter || needed > room) continue;
		shown.push(words(binding));
		room -= needed;
	}
	return [...shown, words(last)].join('  ');
}

/** Moves a cursor in a list, staying inside. */
export const moved = (cursor: number, by: number, count: number): number =>
	Math.max(0, Math.min(count - 1, cursor + by));

/** The keys that go up and down, and how far: by a line, by a page, to an end. */
const strides: readonly (readonly [key: string, shown: string, words: string, by: (app: App) => number])[] = [
	['up', 'Up', 'up', () => -1],
	['down', 'Down', 'down', () => 1],
	['page-up', 'PgUp', 'a page up', ({ page }) => -page],
	['page-down', 'PgDn', 'a page down', ({ page }) => page],
	['home', 'Home', 'to the first', () => Number.NEGATIVE_INFINITY],
	['end', 'End', 'to the last', () => Number.POSITIVE_INFINITY],
];

/** The keys of a list with `count` rows. */
export const listKeys = (count: (app: App) => number): Binding[] =>
	strides.map(([key, shown, label, by]) => ({
		keys: [key],
		shown,
		label,
		minor: true,
		when: app => count(app) > 0,
		run: app => ({ ...app, cursor: moved(app.cursor, by(app), count(app)) }),
	}));

/** The page keys alone, for a text beside a list. */
export const pageKeys = (when: (app: App) => boolean): Binding[] =>
	scrollKeys(when).filter(({ keys }) => keys[0]!.startsWith('page-'));

/** The same keys where a page of text is read that may be longer than the window. */
export const scrollKeys = (when: (app: App) => boolean = () => true): Binding[] =>
	strides.map(([key, shown, label, by]) => ({
		keys: [key],
		shown,
		label,
		minor: true,
		when,
		run: app => ({ ...app, scroll: Math.max(0, Math.min(200, app.scroll + by(app))) }),
	}));
