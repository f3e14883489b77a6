/** Two letters of ISO/IEC 60757 and three-letter codes of the shop, by the color's own word. */
const codes: Readonly<Record<string, readonly string[]>> = {
	black: ['bk', 'blk'],
	brown: ['bn', 'brn', 'bwn'],
	red: ['rd', 'red'],
	orange: ['og', 'org', 'orn'],
	yellow: ['ye', 'yel', 'ylw'],
	green: ['gn', 'grn'],
	blue: ['bu', 'blu'],
	violet: ['vt', 'vio', 'pur', 'ppl', 'purple'],
	gray: ['gy', 'gry', 'gra', 'grey'],
	white: ['wh', 'wht'],
	pink: ['pk', 'pnk'],
	turquoise: ['tq', 'trq'],
	tan: ['tn'],
	gold: ['gd', 'gld'],
	silver: ['sr', 'sil'],
	'green/yellow': ['gnye'],
};

const shades: Readonly<Record<string, string>> = { light: 'light', lt: 'light', dark: 'dark', dk: 'dark' };

const colors = new Map(
	Object.entries(codes).flatMap(([color, short]) => [color, ...short].map(word => [word, color] as const)),
);

/**
 * A wire's color as base and stripe in one spelling, `green/white`: from words, from ISO/IEC 60757 (`GN/WH`, `GNWH`) or shop
 * codes (`Grn-Wht`); null where it is none. The order counts: green with a white stripe is not white with a green one.
 */
export function readColor(text: string): string | null {
	const words = text
		.toLowerCase()
		.replace(/\b(with|stripe|striped|tracer|on|and|wire)\b/g, ' ')
		.split(/[^a-z]+/)
		.filter(word => word !== '');
	const found: string[] = [];
	let shade = '';
	for (const word of words) {
		const shaded = Object.hasOwn(shades, word) ? shades[word] : undefined;
		const read = shaded ? null : colorsIn(word);
		if (shaded) shade = `${shaded} `;
		else if (!read) return null;
		else {
			found.push(...read.map((color, at) => (at === 0 ? shade + color : color)));
			shade = '';
		}
	}
	return found.length > 0 && found.length <= 3 && shade === '' ? found.join('/') : null;
}

/** The color of a word, or those of two codes written together. */
function colorsIn(word: string): string[] | null {
	const one = colors.get(word);
	if (one) return one.split('/');
	for (const size of [2, 3]) {
		if (word.length !== 2 * size) continue;
		const two = [word.slice(0, size), word.slice(size)].map(part => colors.get(part));
		if (two[0] && two[1]) return [two[0], two[1]];
	}
	return null;
}
