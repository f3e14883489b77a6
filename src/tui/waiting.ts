import type { Frame } from './frame.ts';
import { clip, joined, line } from './text.ts';
import { type Appearance, bar } from './theme.ts';

/** A screen that shows what is being done, and the share of it that is; null: that is not known. */
export const waiting = (doing: string, share: number | null, width: number, appearance: Appearance): Frame => ({
	top: [
		line(clip(doing, width), 'title'),
		joined(
			{ text: bar(share ?? 0, Math.max(8, Math.min(40, width - 8)), appearance), look: 'good' },
			{ text: share === null ? '' : ` ${Math.floor(100 * share)} %`, look: 'quiet' },
		),
	],
	rows: null,
	bottom: [],
	panel: [],
	footer: [],
});
