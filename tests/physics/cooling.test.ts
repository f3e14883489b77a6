import { expect, test } from 'vitest';
import { coolantShare, heatToCoolant } from '../../src/physics/cooling.ts';
import { expectRange, expectRefusals } from './spoilt.ts';

test('heat to the coolant is the usual share of the fuel, inside its range', () => {
	expect(heatToCoolant(0.03, 43.44e6)).toBeCloseTo(0.03 * 43.44e6 * 0.25, 6);
	expect(heatToCoolant(0.03, 43.44e6, coolantShare.low)).toBeLessThan(heatToCoolant(0.03, 43.44e6));
	expect(heatToCoolant(0.03, 43.44e6, coolantShare.high)).toBeGreaterThan(heatToCoolant(0.03, 43.44e6));
});

test('heat to the coolant is refused without fuel, heat or share', () => {
	expectRefusals((f, h, s) => heatToCoolant(f!, h!, s!), {
		'fuel flow': 0.03,
		'heating value': 43e6,
		'coolant share': 0.22,
	});
});

test('ranges are taken to their ends and no further', () => {
	expectRange(share => heatToCoolant(0.03, 43e6, share), 'coolant share', 0, 1);
});
