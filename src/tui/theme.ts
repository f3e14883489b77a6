import type { TextProps } from 'ink';
import type { Look } from './text.ts';

/** Sixteen colours; blue and yellow, which most eyes tell apart. Every look has a word or a mark of its own besides. */
export const theme: Readonly<Record<Look, TextProps>> = {
	plain: {},
	title: { bold: true },
	quiet: { dimColor: true },
	good: { color: 'blueBright' },
	odd: { color: 'yellow' },
	bad: { color: 'yellow', bold: true },
	field: { bold: true },
	alert: { color: 'redBright', bold: true },
};
