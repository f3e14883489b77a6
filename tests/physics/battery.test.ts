import { describe, expect, test } from 'vitest';
import { daysToFlat, stateOfCharge } from '../../src/physics/battery.ts';
import { expectRange, expectRefusals } from './spoilt.ts';

describe('a battery', () => {
	test('is full from 12.65 V up, flat from 11.89 V down, and in between more so with every bit of it', () => {
		expect([stateOfCharge(12.9), stateOfCharge(12.65), stateOfCharge(11.89), stateOfCharge(9)]).toEqual([1, 1, 0, 0]);
		for (let volts = 11.9; volts <= 12.65; volts += 0.01)
			expect(stateOfCharge(volts)).toBeGreaterThan(stateOfCharge(volts - 0.01));
	});

	test('of 60 Ah lasts 25 days at 50 mA, half of that being usable', () => {
		expect(daysToFlat(60 * 3600, 0.05)).toBeCloseTo(25, 12);
		expect(daysToFlat(60 * 3600, 0.05, 1)).toBeCloseTo(50, 12);
	});

	test('is refused out of range', () => {
		expectRefusals(v => stateOfCharge(v!), { 'battery volts': 12.4 });
		expectRefusals((c, d, u) => daysToFlat(c!, d!, u!), {
			'battery charge': 2e5,
			'key-off draw': 0.05,
			'usable share': 0.5,
		});
		expect(() => daysToFlat(2e5, 0)).toThrow('key-off draw');
	});
});

test('ranges are taken to their ends and no further', () => {
	expectRange(stateOfCharge, 'battery volts', 0, 16);
	expect(() => daysToFlat(2e5, 0.05, 1.001)).toThrow('usable share');
});
