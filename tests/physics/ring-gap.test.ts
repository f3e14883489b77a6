import { describe, expect, it } from 'vitest';
import { ringGapNeeded } from '../../src/physics/ring-gap.ts';

const psi = 6894.757293168;

describe('ring gap needed, 4 in bore (common practice)', () => {
	it.each([
		['on the street', 0, false, 0.018],
		['in hard use', 0, true, 0.02],
		['at 1 psi of boost', 1, false, 0.024],
		['at 12 psi', 12, true, 0.024],
		['above 12 psi', 12.1, false, 0.028],
	])('%s', (_, boost, hard, inches) => {
		expect(ringGapNeeded(4 * 0.0254, { boost: boost * psi, hard }) / 0.0254).toBeCloseTo(inches, 12);
	});

	it('refuses a vacuum, and a bore of nothing', () => {
		expect(() => ringGapNeeded(0.1, { boost: -1, hard: false })).toThrow('boost');
		expect(() => ringGapNeeded(0, { boost: 0, hard: false })).toThrow('bore');
	});
});
