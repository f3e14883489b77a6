import type { Line } from './text.ts';

/** A list that a screen shows: its rows, the one the cursor is on. */
export interface Rows {
	readonly items: readonly string[];
	readonly cursor: number;
}

/** What a screen wants drawn, before it is cut to the window. */
export interface Frame {
	readonly top: readonly Line[];
	/** How many lines under the first are passed, where the top is a page to be read. */
	readonly scroll?: number;
	readonly rows: Rows | null;
	/** Below the list: what was said, the field. Never cut. */
	readonly bottom: readonly Line[];
	/** The first thing to go when the window is small. */
	readonly panel: readonly Line[];
	readonly footer: readonly Line[];
}

/** The same, cut so that it is one row lower than the window. */
export interface Cut extends Frame {
	/** First row of the list in sight. */
	readonly from: number;
	readonly shown: number;
	/** Whether there is room for an empty line above the list and above the footer. */
	readonly gap: boolean;
}

/**
 * Makes a frame fit a window: the panel goes first, then the top's last lines, and the list scrolls. Question, field
 * and footer always stay.
 */
export function cutTo(frame: Frame, height: number): Cut {
	const room = Math.max(4, height - 1);
	const count = frame.rows?.items.length ?? 0;
	const fixed = frame.bottom.length + frame.footer.length;
	const whole = fixed + frame.top.length + Math.min(count, 8) + frame.panel.length;
	const panel = whole <= room ? frame.panel : [];
	const left = room - fixed - panel.length;
	// A list keeps three rows of its own, and the question the rest; a short list leaves more.
	const top = page(frame.top, Math.max(1, left - Math.min(count, 3)), frame.scroll);
	const shown = Math.max(count > 0 ? 1 : 0, Math.min(count, left - top.length));
	const from = Math.max(0, Math.min(count - shown, (frame.rows?.cursor ?? 0) - Math.floor(shown / 2)));
	const gap = room - fixed - panel.length - top.length - shown > 2;
	return { ...frame, top, panel, from, shown, gap };
}

const more: Line = { text: '-- more: Down', look: 'quiet' };

/** The part of a page that fits. Its first line, the title, stays; a page that is read on says that there is more. */
function page(lines: readonly Line[], room: number, scroll: number | undefined): readonly Line[] {
	const [title, ...text] = lines;
	if (scroll === undefined || lines.length <= room || !title || room < 3) return lines.slice(0, room);
	const from = Math.min(scroll, text.length - (room - 1));
	const part = text.slice(from, from + room - 1);
	return from + room - 1 < text.length ? [title, ...part.slice(0, -1), more] : [title, ...part];
}
