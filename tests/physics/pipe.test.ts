import { describe, expect, test } from 'vitest';
import { boreArea, pipeVelocity } from '../../src/physics/pipe.ts';
import { expectRefusals } from './spoilt.ts';

describe('flow in a round bore', () => {
	test('is four times as fast in half the bore', () => {
		expect(pipeVelocity(0.4, 1.2, 0.04) / pipeVelocity(0.4, 1.2, 0.08)).toBeCloseTo(4, 12);
	});

	test('times density and area is the flow again, and nothing flows at no speed', () => {
		expect(pipeVelocity(0.4, 1.2, 0.06) * 1.2 * boreArea(0.06)).toBeCloseTo(0.4, 14);
		expect(pipeVelocity(0, 1.2, 0.06)).toBe(0);
	});

	test('is refused without flow, density or bore', () => {
		expectRefusals((f, d, b) => pipeVelocity(f!, d!, b!), { flow: 0.4, density: 1.2, bore: 0.06 });
	});
});
