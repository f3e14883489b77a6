import { describe, expect, it } from 'vitest';
import { dash, dashSize } from '../../../src/units/tables/dash.ts';

describe('a dash size', () => {
	it.each([
		[3, '3/16'],
		[4, '1/4'],
		[8, '1/2'],
		[10, '5/8'],
		[12, '3/4'],
		[14, '7/8'],
		[16, '1'],
		[20, '1 1/4'],
		[24, '1 1/2'],
		[32, '2'],
	])('of %d says that it is the outside, %s in', (size, inches) => {
		expect(dash.remark?.(size)).toBe(`-${size} is the tube's outside, ${inches} in; measure the bore`);
	});

	it('is seen in every way it is written, and in no other number', () => {
		for (const text of ['AN8', 'an -8', 'dash-8', '8an', '-8 AN', '8 JIC']) expect(dashSize(text, true)).toBe(8);
		expect(dashSize('-8', false)).toBe(8);
		for (const text of ['-8', '8', '-8 in', '-100', '--8', 'AN', 'AN 8 x'])
			expect(dashSize(text, true)).toBeUndefined();
	});
});
