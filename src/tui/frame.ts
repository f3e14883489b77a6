import { widthOf } from '../text/wrap.ts';
import { linesIn, windowOn } from './list-window.ts';
import { joined, type Line, type Look, line } from './text.ts';
import { type Appearance, glyphs } from './theme.ts';

/** A list that a screen shows: its rows, the one the cursor is on. */
export interface Rows {
	/** A row that is too long for its line is several, with line breaks between. */
	readonly items: readonly string[];
	/** How each looks where that says something: what is at stake, say. */
	readonly looks?: readonly Look[];
	readonly cursor: number;
}

/** What a screen wants drawn, before it is fitted to the window. */
export interface Frame {
	/** The title first. */
	readonly top: readonly Line[];
	/** How many lines under the first are passed, where the top is a page to be read; of the help, where there is one. */
	readonly scroll?: number;
	readonly rows: Rows | null;
	/** Below the list, so that the choices stay in sight: a text that may be long. */
	readonly help?: readonly Line[];
	/** Below that: what was said, the field. Cut in the smallest windows only, and then neither its first line nor its last ones. */
	readonly bottom: readonly Line[];
	/** The first thing to go when the window is small. */
	readonly panel: readonly Line[];
	/** What stands in a second pane where there is room for one, at a width; then neither help nor panel is below. */
	readonly pane?: (width: number) => readonly Line[];
	readonly footer: readonly Line[];
}

/** The same, cut so that it fits the window. */
export interface Cut extends Frame {
	readonly help: readonly Line[];
	/** First row of the list in sight. */
	readonly from: number;
	readonly shown: number;
	/** How many lines the list has. */
	readonly listed: number;
	/** Whether there is room for an empty line above the list and above the footer. */
	readonly gap: boolean;
}

/**
 * Makes a frame fit a window: the panel goes first, then the help, then the top's last lines, and the list scrolls.
 * Question, field and footer always stay.
 */
export function cutTo(frame: Frame, height: number): Cut {
	const items = frame.rows?.items ?? [];
	const count = linesIn(items);
	const help = frame.help ?? [];
	const bottom = bottomIn(frame.bottom, height - frame.footer.length - 1);
	const fixed = bottom.length + frame.footer.length;
	const whole = fixed + frame.top.length + Math.min(count, 8) + frame.panel.length;
	const panel = help.length === 0 && whole <= height ? frame.panel : [];
	const left = Math.max(1, height - fixed - panel.length);
	// A list keeps three rows of its own, a help as many, and the question the rest; what is short leaves more.
	const least = Math.min(count, 3) + Math.min(help.length, 3);
	const top = page(frame.top, Math.max(1, left - least), help.length > 0 ? undefined : frame.scroll);
	const rest = left - top.length;
	const listed = Math.max(count > 0 ? 1 : 0, Math.min(count, rest - Math.min(help.length, Math.max(3, rest - count))));
	const { from, shown } = windowOn(items, frame.rows?.cursor ?? 0, listed);
	const read = scrolled(help, Math.max(0, rest - listed), frame.scroll ?? 0);
	const gap = rest - listed - read.length > 2;
	return { ...frame, top, help: read, bottom, panel, from, shown, listed, gap };
}

/** What is below a list where there is hardly any room: what must not be missed comes first in it, the field last. */
const bottomIn = (lines: readonly Line[], room: number): readonly Line[] =>
	lines.length <= room ? lines : [...lines.slice(0, 1), ...lines.slice(lines.length - room + 1)];

/** How many lines a page key goes on in a frame: as many as are in sight, less one. */
export function pageIn(frame: Frame, height: number): number {
	const { help, rows, shown, top } = cutTo(frame, height);
	return Math.max(1, (help.length > 0 ? help.length - 1 : rows ? shown : top.length - 2) - 1);
}

const more = line('-- more: PgDn', 'quiet');

/** The part of a text that fits; one that is read on says that there is more. */
function scrolled(text: readonly Line[], room: number, scroll: number): readonly Line[] {
	if (text.length <= room) return text;
	const from = Math.max(0, Math.min(scroll, text.length - room));
	const part = text.slice(from, from + room);
	return from + room < text.length && room > 1 ? [...part.slice(0, -1), more] : part;
}

/** The part of a page that fits. Its first line, the title, stays. */
function page(lines: readonly Line[], room: number, scroll: number | undefined): readonly Line[] {
	const [title, ...text] = lines;
	if (scroll === undefined || lines.length <= room || !title || room < 3) return lines.slice(0, room);
	return [title, ...scrolled(text, room - 1, scroll)];
}

/** Under this a question and its field have no room. */
export const leastWindow = { columns: 24, rows: 8 } as const;
/** From this width on there is a second pane. */
const twoPanes = 100;

/** How wide the column of the question is. */
export const mainWidth = (columns: number): number =>
	columns >= twoPanes ? Math.min(84, Math.floor((columns - 3) * 0.58)) : columns - 1;

const empty = line('');

/** The frame as the lines of a window: the footer on the last ones, the pane beside the rest where there is room for it. */
export function compose(frame: Frame, columns: number, height: number, look: Appearance): Line[] {
	if (columns < leastWindow.columns || height < leastWindow.rows)
		return [line('Needs more'), line(`room: ${leastWindow.columns} x ${leastWindow.rows}`)].slice(0, height);
	const inTwo = columns >= twoPanes && frame.pane !== undefined;
	const cut = cutTo(inTwo ? { ...frame, panel: [], help: [] } : frame, height);
	const { cursor } = glyphs(look);
	const rows = frame.rows?.items.slice(cut.from, cut.from + cut.shown) ?? [];
	const [title = empty, ...top] = cut.top;
	const body = [
		...top,
		...(cut.gap ? [empty] : []),
		...rows
			.flatMap((text, at) => {
				const here = cut.from + at === frame.rows!.cursor;
				const look = here ? 'field' : (frame.rows!.looks?.[cut.from + at] ?? 'plain');
				return text.split('\n').map((part, row) => {
					const mark = here && row === 0 ? `${cursor} ` : '  ';
					return here ? joined({ text: mark, look: 'here' }, { text: part, look }) : line(mark + part, look);
				});
			})
			.slice(0, cut.listed),
		...cut.help,
	];
	const foot = [...cut.bottom, ...cut.panel];
	const between = Math.max(0, height - 1 - body.length - foot.length - cut.footer.length);
	const main = [...body, ...Array.from({ length: between }, () => empty), ...foot];
	return [title, ...(inTwo ? withPane(main, frame, columns, look) : main), ...cut.footer];
}

/** The pane to the right of the lines, as much of it as there are lines. */
function withPane(main: readonly Line[], frame: Frame, columns: number, look: Appearance): Line[] {
	const width = mainWidth(columns);
	const pane = scrolled(frame.pane!(columns - width - 4), main.length, frame.scroll ?? 0);
	const { edge } = glyphs(look);
	return main.map((left, at) => {
		const pad = ' '.repeat(Math.max(0, width - widthOf(left.text)));
		const right = pane[at] ?? empty;
		return joined(...(left.parts ?? [left]), { text: `${pad} ${edge} `, look: 'quiet' }, ...(right.parts ?? [right]));
	});
}
