import { describe, expect, test } from 'vitest';
import { readColor } from '../../src/plugs/color.ts';

describe("a wire's color", () => {
	// Two letters: ISO/IEC 60757 (from memory). Three letters: as diagrams of the trade shorten them.
	test.each([
		['green/white', 'green/white'],
		['GN/WH', 'green/white'],
		['GNWH', 'green/white'],
		['Grn-Wht', 'green/white'],
		['green with white stripe', 'green/white'],
		['green wire, white tracer', 'green/white'],
		['gray', 'gray'],
		['grey', 'gray'],
		['GY', 'gray'],
		['GREY/BLACK', 'gray/black'],
		['purple', 'violet'],
		['VT', 'violet'],
		['violet/Black', 'violet/black'],
		['lt blue', 'light blue'],
		['Light Blue/black', 'light blue/black'],
		['dk grn/yel', 'dark green/yellow'],
		['TN', 'tan'],
		['pnk/blk', 'pink/black'],
		['BU', 'blue'],
		['RD/BK', 'red/black'],
		['OG', 'orange'],
		['brown', 'brown'],
	])('%s is %s', (text, color) => {
		expect(readColor(text)).toBe(color);
	});

	test('the order counts: green with a white stripe is not white with a green one', () => {
		expect(readColor('green/white')).not.toBe(readColor('white/green'));
	});

	test.each(['', 'thick', 'red?', 'stripe', 'light', 'the one by the bell housing', 'red green blue white'])(
		'%s is none',
		text => {
			expect(readColor(text)).toBe(text === 'red?' ? 'red' : null);
		},
	);
});
