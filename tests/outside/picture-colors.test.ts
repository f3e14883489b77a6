import { describe, expect, test } from 'vitest';
import { color } from '../../src/report/pictures/draw.ts';

type Light = readonly [red: number, green: number, blue: number];

/** sRGB to light (IEC 61966-2-1). */
const light = (hex: string): Light => {
	const whole = hex.length === 4 ? hex.replace(/[0-9a-f]/g, '$&$&') : hex;
	return [1, 3, 5].map(at => {
		const share = Number.parseInt(whole.slice(at, at + 2), 16) / 255;
		return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
	}) as unknown as Light;
};

/** Relative luminance, as WCAG 2.2 defines it: what a gray copy keeps. */
const luminance = ([red, green, blue]: Light): number => 0.2126 * red + 0.7152 * green + 0.0722 * blue;

const contrast = (one: Light, other: Light): number => {
	const [dark, bright] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
	return (bright + 0.05) / (dark + 0.05);
};

/** Eyes without red or green cones: Vienot, Brettel and Mollon 1999, as matrices on light; from memory. */
const eyes: Readonly<Record<string, readonly Light[]>> = {
	'all cones': [
		[1, 0, 0],
		[0, 1, 0],
		[0, 0, 1],
	],
	'no red': [
		[0.11238, 0.88762, 0],
		[0.11238, 0.88762, 0],
		[0.00401, -0.00401, 1],
	],
	'no green': [
		[0.29275, 0.70725, 0],
		[0.29275, 0.70725, 0],
		[-0.02234, 0.02234, 1],
	],
};
const seen = (rows: readonly Light[], [red, green, blue]: Light): Light =>
	rows.map(([r, g, b]) => r * red + g * green + b * blue) as unknown as Light;

describe.each(Object.entries(eyes))('the colors of the pictures, seen with %s', (_, rows) => {
	const of = (name: keyof typeof color) => seen(rows, light(color[name]));

	// WCAG 2.2, success criterion 1.4.11: 3 to 1 for what carries meaning against what is beside it.
	test.each(['ink', 'soft', 'fill', 'over'] as const)('%s stands out from the paper', name => {
		expect(contrast(of(name), of('paper'))).toBeGreaterThan(3);
	});

	// Bars have a dark edge as well, and heavier ones where they are over a limit: lightness alone does the rest.
	test.each([
		['fill', 'spare'],
		['fill', 'over'],
		['over', 'spare'],
	] as const)('%s and %s differ in lightness', (one, other) => {
		expect(contrast(of(one), of(other))).toBeGreaterThan(1.8);
	});
});

test('the measure itself: black on white is 21 to 1 (WCAG 2.2)', () => {
	expect(contrast(light('#000'), light('#fff'))).toBeCloseTo(21, 9);
});
