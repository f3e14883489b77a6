import { describe, expect, test } from 'vitest';
import { bar, paints, styleOf } from '../../src/tui/theme.ts';

/** Contrast of two colors by the Web Content Accessibility Guidelines 2.2, "contrast ratio" and "relative luminance". */
function contrast(one: string, other: string): number {
	const luminance = (color: string) => {
		const [red, green, blue] = [1, 3, 5]
			.map(at => Number.parseInt(color.slice(at, at + 2), 16) / 255)
			.map(part => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
		return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
	};
	const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
	return (light! + 0.05) / (dark! + 0.05);
}

describe('every color can be read: 4.5 to 1, level AA of the guidelines for text', () => {
	test.each(Object.entries(paints))('%s', (_, { dark, light }) => {
		for (const black of ['#000000', '#1e1e2e', '#2d2d2d']) expect(contrast(dark, black)).toBeGreaterThan(4.5);
		for (const white of ['#ffffff', '#fdf6e3', '#eeeeee']) expect(contrast(light, white)).toBeGreaterThan(4.5);
	});
});

test('without color nothing is colored, with sixteen they are named, with more they are mixed for the background', () => {
	const at = (depth: number, background: 'dark' | 'light' = 'dark') =>
		styleOf('person', { depth, background, unicode: false }).color;
	expect(at(1)).toBeUndefined();
	expect(at(4)).toBe('red');
	expect(at(24)).not.toBe(at(24, 'light'));
});

test('a bar is as wide as asked for, whatever the share', () => {
	for (const share of [-1, 0, 0.5, 1, 7])
		expect(bar(share, 10, { depth: 1, background: 'dark', unicode: false })).toHaveLength(10);
	expect(bar(0.5, 10, { depth: 1, background: 'dark', unicode: false })).toBe('#####.....');
});
