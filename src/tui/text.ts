import { sanitize } from '../text/sanitize.ts';

/** How a line looks; the words say it too, colour is never the only sign. */
export type Look = 'plain' | 'title' | 'quiet' | 'good' | 'odd' | 'bad' | 'field';

export interface Line {
	readonly text: string;
	readonly look: Look;
}

export const line = (text: string, look: Look = 'plain'): Line => ({ text, look });

/** Text as lines of a width: wrapped at spaces, hard where a word is longer. Free text is made harmless here, once. */
export function lines(text: string, width: number, look: Look = 'plain', indent = ''): Line[] {
	const made: string[] = [];
	let now = '';
	for (const word of sanitize(text)
		.split(' ')
		.filter(part => part !== '')) {
		for (const piece of cut(word, Math.max(4, width - indent.length))) {
			const next = now === '' ? piece : `${now} ${piece}`;
			if (now !== '' && next.length > width) {
				made.push(now);
				now = indent + piece;
			} else now = next;
		}
	}
	return [...made, now].map(part => line(part.replaceAll('\u00a0', ' ').trimEnd(), look));
}

function cut(word: string, width: number): string[] {
	const pieces: string[] = [];
	for (let at = 0; at < word.length; at += width) pieces.push(word.slice(at, at + width));
	return pieces;
}

/** A line cut to a width, with a mark where something is missing. */
export function clip(text: string, width: number): string {
	const whole = sanitize(text);
	return whole.length <= width ? whole : `${whole.slice(0, Math.max(0, width - 2))}..`;
}
