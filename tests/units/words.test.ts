import { describe, expect, it } from 'vitest';
import { acceptedInWords, kindInWords } from '../../src/units/words.ts';

describe('kinds in words', () => {
	it('carry their article', () => {
		expect(kindInWords('length')).toBe('a length');
		expect(kindInWords('mass-flow')).toBe('a mass flow');
		expect(kindInWords('octane')).toBe('an octane number');
	});

	it('list the units that are taken', () => {
		expect(acceptedInWords(['octane', 'count'])).toBe('an octane number (AKI, RON) or a bare number without a unit');
		expect(acceptedInWords(undefined)).toBe('a number and its unit');
	});
});
