import type { TextProps } from 'ink';
import type { Look } from './text.ts';

/** What the terminal can show. */
export interface Appearance {
	readonly background: 'dark' | 'light';
	/** Bits of color: 1 none, 4, 8 or 24. */
	readonly depth: number;
	/** Whether marks beyond ASCII are drawn. */
	readonly unicode: boolean;
}

/** A color for terminals that mix their own, on a dark and on a light background, and its nearest of the sixteen. */
interface Paint {
	readonly dark: string;
	readonly light: string;
	readonly of16: string;
}

/** Few colors, each with one meaning, and none the only sign of it. */
export const paints = {
	/** Can hurt a person; not saved. */
	person: { dark: '#ff7b72', light: '#a40e26', of16: 'red' },
	/** Can hurt the engine; looks odd. */
	engine: { dark: '#e3b341', light: '#7a5200', of16: 'yellow' },
	/** Can leave it stranded. */
	strands: { dark: '#79c0ff', light: '#0550ae', of16: 'blue' },
	/** Ready, done, taken as read. */
	ready: { dark: '#7ee787', light: '#116329', of16: 'green' },
	/** Where the keys go. */
	here: { dark: '#f0883e', light: '#953800', of16: 'cyan' },
} as const satisfies Record<string, Paint>;

const looks: Readonly<Record<Look, readonly [keyof typeof paints | null, TextProps]>> = {
	plain: [null, {}],
	title: [null, { bold: true }],
	quiet: [null, { dimColor: true }],
	good: ['ready', {}],
	odd: ['engine', {}],
	bad: ['person', {}],
	alert: ['person', { bold: true, inverse: true }],
	field: [null, { bold: true }],
	here: ['here', { bold: true }],
	person: ['person', { bold: true }],
	engine: ['engine', {}],
	strands: ['strands', {}],
};

/** How the drawing library is to draw a look. */
export function styleOf(look: Look, { background, depth }: Appearance): TextProps {
	const [paint, props] = looks[look];
	if (paint === null || depth < 4) return props;
	return { ...props, color: depth === 4 ? paints[paint].of16 : paints[paint][background] };
}

/** Marks of a list and of bars. */
export const glyphs = ({ unicode }: Appearance) =>
	unicode
		? {
				cursor: '\u258c',
				chosen: '\u25cf',
				free: '\u25cb',
				ticked: '\u25a0',
				open: '\u25a1',
				full: '\u2588',
				rest: '\u2591',
				edge: '\u2502',
				line: '\u2500',
			}
		: {
				cursor: '>',
				chosen: '(*)',
				free: '( )',
				ticked: '[x]',
				open: '[ ]',
				full: '#',
				rest: '.',
				edge: '|',
				line: '-',
			};

/** A bar of a width, filled to a share. */
export function bar(share: number, width: number, appearance: Appearance): string {
	const { full, rest } = glyphs(appearance);
	const filled = Math.max(0, Math.min(width, Math.round(share * width)));
	return full.repeat(filled) + rest.repeat(width - filled);
}
