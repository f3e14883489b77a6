/**
 * Typed text with its look-alikes made one: no-break spaces, wide digits, the raised 2 of mm2, every dash,
 * curly quotes, vulgar fractions. White space is one space. A raised digit on a number stays apart: 10 to the
 * sixth is not 106. Linear in the length of the text.
 */
export function plainText(text: string): string {
	return text
		.replace(/[¼-¾⅐-⅞]/g, fraction => ` ${fraction}`)
		.replace(/(?<=\d)[²³¹⁰⁴-⁹₀-₉]/g, raised => `^${raised}`)
		.normalize('NFKC')
		.replace(/[‐‑‒–—−]/g, '-')
		.replace(/[′’‘`]/g, "'")
		.replace(/[″”“]/g, '"')
		.replaceAll("''", '"')
		.replaceAll('⁄', '/')
		.replace(/\s+/g, ' ')
		.trim();
}

/** A unit's spelling without what shops vary: case, spaces, points, hyphens, brackets, `per` for `/`, signs for words. */
export function spellingKey(spelling: string): string {
	return plainText(spelling)
		.toLowerCase()
		.replaceAll('°', 'deg')
		.replaceAll('ω', 'ohm')
		.replaceAll('μ', 'u')
		.replaceAll(' per ', '/')
		.replace(/[ .·⋅*×^()[\]_-]/g, '');
}

/** What was typed, fit to be repeated in a message: short, and free of characters that steer a terminal. */
export function quoted(text: string): string {
	const line = text.slice(0, 200).replace(/\s+/g, ' ').replace(/\p{C}/gu, '').trim();
	const head = [...line].slice(0, 40).join('');
	return `"${head}${head === line ? '' : '...'}"`;
}
