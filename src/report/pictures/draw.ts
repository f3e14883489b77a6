import { escaped } from '../html.ts';

/** A drawing's measures, in its own units. */
export const sheet = { width: 640, left: 24, right: 48, top: 36, line: 42 } as const;

/**
 * The colors of every picture. They differ in lightness as well, so that a gray copy and eyes that see no red or green keep them
 * apart; what is over a limit is heavier too.
 */
export const color = {
	ink: '#111',
	paper: '#fff',
	soft: '#666',
	/** What there is, as far as it is wanted. */
	fill: '#14446e',
	/** What there is beyond that. */
	spare: '#c9dcec',
	/** What is over a limit, or too low. */
	over: '#d55e00',
} as const;

/** A picture with the words that stand for it where it cannot be seen. */
export interface Picture {
	readonly title: string;
	readonly svg: string;
}

/** An SVG of our own plain kind: dark lines on white, set apart by dash and weight as well as by color. */
export function drawing(title: string, description: string, height: number, inside: readonly string[]): Picture {
	// Several pictures stand in one HTML file: their ids must differ.
	const id = title.toLowerCase().replaceAll(' ', '-');
	const svg = [
		`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${sheet.width} ${height}" role="img" aria-labelledby="${id}-title ${id}-words" font-family="sans-serif" font-size="13" fill="${color.ink}">`,
		`<title id="${id}-title">${escaped(title)}</title>`,
		`<desc id="${id}-words">${escaped(description)}</desc>`,
		`<rect width="${sheet.width}" height="${height}" fill="${color.paper}"/>`,
		label(12, 22, title, { weight: 'bold', size: 15 }),
		...inside,
		'</svg>',
	].join('\n');
	return { title, svg };
}

interface LabelStyle {
	readonly anchor?: 'start' | 'middle' | 'end';
	readonly weight?: 'bold';
	readonly size?: number;
}

/** Words with a white edge, so that a line behind them does not strike them out. */
export function label(x: number, y: number, text: string, { anchor = 'start', weight, size }: LabelStyle = {}): string {
	const style = `${weight ? ` font-weight="${weight}"` : ''}${size ? ` font-size="${size}"` : ''}`;
	return `<text x="${round(x)}" y="${round(y)}" text-anchor="${anchor}"${style} stroke="${color.paper}" stroke-width="3" stroke-linejoin="round" paint-order="stroke">${escaped(text)}</text>`;
}

export function rule(x1: number, y1: number, x2: number, y2: number, stroke: string = color.ink, dash = ''): string {
	return `<line x1="${round(x1)}" y1="${round(y1)}" x2="${round(x2)}" y2="${round(y2)}" stroke="${stroke}"${dash ? ` stroke-dasharray="${dash}"` : ''}/>`;
}

/** A line that is seen on a dark bar as well as on paper: it has a white edge. */
export const edged = (x1: number, y1: number, x2: number, y2: number, dash = ''): string =>
	`<line x1="${round(x1)}" y1="${round(y1)}" x2="${round(x2)}" y2="${round(y2)}" stroke="${color.paper}" stroke-width="3.5"/>${rule(x1, y1, x2, y2, color.ink, dash)}`;

/** A bar; one that is over a limit, or too low, has a heavy edge. */
export function bar(
	[x, y]: readonly [number, number],
	[width, height]: readonly [number, number],
	fill: string = color.fill,
): string {
	const weight = fill === color.over ? 3 : 1;
	return `<rect x="${round(x)}" y="${round(y)}" width="${round(width)}" height="${round(height)}" fill="${fill}" stroke="${color.ink}" stroke-width="${weight}"/>`;
}

/** Coordinates to a tenth: the same bytes on every machine. */
export const round = (value: number): number => Math.round(value * 10) / 10;
