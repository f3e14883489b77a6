import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kinds, unitsOf } from '../../src/units/table.ts';
import { fromCanonical, spreadToCanonical, toCanonical, toCanonicalRounded } from '../../src/units/unit.ts';
import { unit } from './ask.ts';

const straight = kinds.flatMap(unitsOf).filter(unit => !unit.curve);

describe('converting', () => {
	it.each(straight.map(unit => [unit.kind, unit.symbol, unit] as const))('gives %s in %s back as it came', (...row) => {
		const unit = row[2];
		fc.assert(
			fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), typed => {
				// The floor is for numbers so small that the machine has no digits left for them.
				const slack = 1e-12 * (Math.abs(typed) + Math.abs(unit.offset / unit.factor)) + Number.MIN_VALUE * 1e9;
				expect(Math.abs(fromCanonical(toCanonical(typed, unit), unit) - typed)).toBeLessThanOrEqual(slack);
			}),
			{ seed: 1, numRuns: 50 },
		);
	});

	it('of what a person wrote leaves no noise in the last digit', () => {
		expect(toCanonicalRounded(70, unit('ratio', '%'))).toBe(0.7);
		expect(toCanonicalRounded(0.03, unit('length', 'in'))).toBe(0.000762);
		for (const one of straight) expect(toCanonicalRounded(7.3, one)).toBeCloseTo(toCanonical(7.3, one), 9);
	});

	it('rises with the number typed', () => {
		for (const unit of straight) expect(toCanonical(2, unit)).toBeGreaterThan(toCanonical(1, unit));
	});
});

describe('a spread', () => {
	it('is a difference, so a temperature scale does not shift it', () => {
		expect(spreadToCanonical(9, unit('temperature', 'degF'))).toBeCloseTo(5, 12);
		expect(spreadToCanonical(5, unit('temperature', 'degC'))).toBe(5);
		expect(spreadToCanonical(2, unit('octane', 'AKI'))).toBe(2);
	});

	it('is the distance between two values in every straight unit', () => {
		for (const unit of straight) {
			expect(spreadToCanonical(3, unit)).toBeCloseTo(toCanonical(4, unit) - toCanonical(1, unit), 9);
		}
	});

	it('of a wire gauge needs the gauge, and is wider on fat wire', () => {
		const awg = unit('area', 'AWG');
		expect(() => spreadToCanonical(1, awg)).toThrow(RangeError);
		expect(spreadToCanonical(1, awg, 4)).toBeGreaterThan(spreadToCanonical(1, awg, 10));
		expect(spreadToCanonical(1, awg, 10)).toBeCloseTo((toCanonical(9, awg) - toCanonical(11, awg)) / 2, 15);
	});
});
