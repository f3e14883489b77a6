import { sanitize } from '../text/sanitize.ts';
import { clip as cutOff, wrap } from '../text/wrap.ts';

/** How a line looks; the words say it too, color is never the only sign. */
export type Look =
	| 'alert'
	| 'plain'
	| 'title'
	| 'quiet'
	| 'good'
	| 'odd'
	| 'bad'
	| 'field'
	| 'here'
	| 'person'
	| 'engine'
	| 'strands';

export interface Span {
	readonly text: string;
	readonly look: Look;
}

/** A line; where its parts look different, `parts` are it, and `text` is what they say together. */
export interface Line extends Span {
	readonly parts?: readonly Span[];
}

export const line = (text: string, look: Look = 'plain'): Line => ({ text, look });

/** A line of parts that look different. */
export const joined = (...parts: readonly Span[]): Line => ({
	text: parts.map(({ text }) => text).join(''),
	look: 'plain',
	parts,
});

/** Text as lines of a width. Free text is made harmless here, once. */
export const lines = (text: string, width: number, look: Look = 'plain', indent = ''): Line[] =>
	wrapped(text, width, indent).map(part => line(part, look));

/** What was wrapped lately: a screen is laid out at each key, and hardly any of its texts has changed by then. */
const lately = new Map<string, readonly string[]>();
const capacity = 500;

function wrapped(text: string, width: number, indent: string): readonly string[] {
	const key = `${width} ${indent.length} ${text}`;
	let parts = lately.get(key);
	if (!parts) {
		parts = wrap(sanitize(text), width, indent).map(part => part.replaceAll('\u00a0', ' ').trimEnd());
		if (lately.size >= capacity) lately.clear();
		lately.set(key, parts);
	}
	return parts;
}

/** A line cut to a width, with a mark where something is missing. */
export const clip = (text: string, width: number): string => cutOff(sanitize(text), width);
