/** A line being typed: its text as the characters a person sees, and where the caret stands among them. */
export interface LineEditor {
	readonly characters: readonly string[];
	readonly caret: number;
}

const segments = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Text as a person sees it, a character each: a letter with its accents, an emoji with its joiners. */
const split = (text: string): string[] => Array.from(segments.segment(text), ({ segment }) => segment);

/** What may stand in a line: no control characters; line breaks and tabs of a paste become spaces or `;`. */
export function typable(text: string): string {
	return text
		.replace(/\r\n?|\n/g, '\n')
		.replace(/\n+$/, '')
		.replace(/[^\P{Cc}\n\t]/gu, '')
		.replace(/[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, '');
}

export const lineEditor = (text = ''): LineEditor => {
	const characters = split(text);
	return { characters, caret: characters.length };
};

export const textOf = ({ characters }: LineEditor): string => characters.join('');

/** Puts text in at the caret. */
export function insert(line: LineEditor, text: string): LineEditor {
	const before = line.characters.slice(0, line.caret).join('') + text;
	// Split again as a whole: an accent typed after its letter joins it.
	const start = split(before);
	return { characters: [...start, ...line.characters.slice(line.caret)], caret: start.length };
}

/** Takes away the character before the caret, or the one under it. */
export function erase(line: LineEditor, which: 'before' | 'under'): LineEditor {
	const at = which === 'before' ? line.caret - 1 : line.caret;
	if (at < 0 || at >= line.characters.length) return line;
	return { characters: line.characters.filter((_, index) => index !== at), caret: at };
}

/** Takes away everything before the caret, or the word before it. */
export function eraseBack(line: LineEditor, what: 'line' | 'word'): LineEditor {
	const before = line.characters.slice(0, line.caret).join('');
	const kept = what === 'line' ? [] : split(before.replace(/\S*\s*$/, ''));
	return { characters: [...kept, ...line.characters.slice(line.caret)], caret: kept.length };
}

/** Moves the caret by characters, or to an end. */
export function move(line: LineEditor, to: 'left' | 'right' | 'home' | 'end'): LineEditor {
	const end = line.characters.length;
	const caret = { left: Math.max(0, line.caret - 1), right: Math.min(end, line.caret + 1), home: 0, end }[to];
	return { ...line, caret };
}
