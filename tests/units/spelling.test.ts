import { describe, expect, it } from 'vitest';
import { plainText, quoted } from '../../src/units/spelling.ts';

describe('plain text', () => {
	it('makes look-alikes one', () => {
		expect(plainText('−5')).toBe('-5');
		expect(plainText('8–10')).toBe('8-10');
		expect(plainText('12\u00a0\u202fpsi\t')).toBe('12 psi');
		expect(plainText('１２')).toBe('12');
		expect(plainText('1½″')).toBe('1 1/2"');
		expect(plainText("3''")).toBe('3"');
	});

	it('keeps a raised digit off the number it stands on', () => {
		expect(plainText('10²')).toBe('10^2');
		expect(plainText('10⁶ mm²')).toBe('10^6 mm2');
	});
});

describe('quoting', () => {
	it('drops what could steer a terminal or turn a line round', () => {
		expect(quoted('a\u001b[31m\u202eb\nc')).toBe('"a[31mb c"');
	});

	it('is short, and splits no character', () => {
		expect(quoted('x'.repeat(500))).toBe(`"${'x'.repeat(40)}..."`);
		expect(quoted('😀'.repeat(50))).toBe(`"${'😀'.repeat(40)}..."`);
		expect(quoted('x'.repeat(40))).toBe(`"${'x'.repeat(40)}"`);
	});
});
