import stringWidth from 'string-width';
import wrapAnsi from 'wrap-ansi';

/** How many columns a terminal gives a text: a letter with its accents has one, an ideograph two. */
export const widthOf = (text: string): number => (/^[ -~]*$/.test(text) ? text.length : stringWidth(text));

/** Text as lines of a width: wrapped at spaces, hard where a word is longer. All lines but the first are indented. */
export function wrap(text: string, width: number, indent = ''): string[] {
	return text.split('\n').flatMap(paragraph => {
		const words = paragraph.split(/[ \t\r]+/).filter(word => word !== '');
		const lines = wrapAnsi(words.join(' '), Math.max(4, width - indent.length), { hard: true }).split('\n');
		return lines.map((line, at) => (at === 0 ? line : indent + line));
	});
}

/** A line cut to a width, with a mark where something is missing. */
export function clip(text: string, width: number): string {
	if (widthOf(text) <= width) return text;
	let cut = text.slice(0, Math.max(0, width - 2));
	while (widthOf(cut) > width - 2 && cut !== '') cut = cut.slice(0, -1);
	return `${cut.replace(/[\ud800-\udbff]$/, '')}..`;
}
