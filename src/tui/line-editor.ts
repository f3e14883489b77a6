import { longestField } from '../text/sanitize.ts';

/** A line being typed: its text as the characters a person sees, and where the caret stands among them. */
export interface LineEditor {
	readonly characters: readonly string[];
	readonly caret: number;
	/** Length of the text in UTF-16 units; never more than a field takes. */
	readonly size: number;
}

const segments = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Text as a person sees it, a character each: a letter with its accents, an emoji with its joiners. */
const split = (text: string): string[] => Array.from(segments.segment(text), ({ segment }) => segment);

export const lineEditor = (text = ''): LineEditor => {
	const short = text.slice(0, longestField);
	const characters = split(short);
	return { characters, caret: characters.length, size: short.length };
};

export const textOf = ({ characters }: LineEditor): string => characters.join('');

/** An accent joins the character before it, a joiner the one before that: no cluster in use is longer than this. */
const near = 12;

/** Puts text in at the caret, as much of it as there is room for. */
export function insert(line: LineEditor, text: string): LineEditor {
	const fits = text.slice(0, longestField - line.size);
	if (fits === '') return line;
	// What stands just before the caret is split again with it: an accent typed after its letter joins it.
	const from = Math.max(0, line.caret - near);
	const joined = split(line.characters.slice(from, line.caret).join('') + fits);
	const characters = [...line.characters.slice(0, from), ...joined, ...line.characters.slice(line.caret)];
	return { characters, caret: from + joined.length, size: line.size + fits.length };
}

/** Takes away the character before the caret, or the one under it. */
export function erase(line: LineEditor, which: 'before' | 'under'): LineEditor {
	const at = which === 'before' ? line.caret - 1 : line.caret;
	return at < 0 || at >= line.characters.length ? line : without(line, at, at + 1);
}

/** Takes away everything before the caret, or the word before it. */
export function eraseBack(line: LineEditor, what: 'line' | 'word'): LineEditor {
	let at = what === 'line' ? 0 : line.caret;
	const blank = (index: number) => /^\s/.test(line.characters[index] ?? '');
	if (what === 'word') {
		while (at > 0 && blank(at - 1)) at--;
		while (at > 0 && !blank(at - 1)) at--;
	}
	return without(line, at, line.caret);
}

function without({ characters, size }: LineEditor, from: number, to: number): LineEditor {
	const gone = characters.slice(from, to).join('').length;
	return { characters: [...characters.slice(0, from), ...characters.slice(to)], caret: from, size: size - gone };
}

/** Moves the caret by characters, or to an end. */
export function move(line: LineEditor, to: 'left' | 'right' | 'home' | 'end'): LineEditor {
	const end = line.characters.length;
	const caret = { left: Math.max(0, line.caret - 1), right: Math.min(end, line.caret + 1), home: 0, end }[to];
	return { ...line, caret };
}
