/** Dots of a braille sign by column and row; its eight dots are bits from U+2800 on (Unicode, block Braille Patterns). */
const dots = [
	[0x01, 0x02, 0x04, 0x40],
	[0x08, 0x10, 0x20, 0x80],
] as const;

/**
 * A curve as lines of text: braille dots, or stars where the terminal has ASCII only.
 *
 * @param points x and y, x rising
 */
export function plot(
	points: readonly (readonly [number, number])[],
	width: number,
	height: number,
	ascii: boolean,
): string[] {
	const [across, down] = ascii ? [1, 1] : [2, 4];
	const [first, last] = [points[0]?.[0] ?? 0, points.at(-1)?.[0] ?? 1];
	const most = Math.max(...points.map(([, y]) => y), Number.MIN_VALUE);
	const cells = Array.from({ length: height }, () => new Uint8Array(width));
	for (const [x, y] of points) {
		const column = Math.min(width * across - 1, Math.floor(((x - first) / (last - first || 1)) * width * across));
		const row = height * down - 1 - Math.min(height * down - 1, Math.floor((Math.max(y, 0) / most) * height * down));
		cells[Math.floor(row / down)]![Math.floor(column / across)]! |= ascii ? 1 : dots[column % 2]![row % 4]!;
	}
	return cells.map(row =>
		Array.from(row, cell => (ascii ? (cell ? '*' : ' ') : String.fromCodePoint(0x2800 + cell)))
			.join('')
			.trimEnd(),
	);
}
