import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { frictionFactor, reynolds } from '../../src/physics/friction.ts';
import { between, expectRange, expectRefusals, seeded } from './spoilt.ts';

/** Colebrook by halving on 1 / sqrt f: slow, and with nothing in common with Newton's steps. */
function colebrookByHalving(re: number, rough: number): number {
	let [low, high] = [0.1, 100];
	for (let step = 0; step < 200; step++) {
		const x = (low + high) / 2;
		if (x + 2 * Math.log10(rough / 3.7 + (2.51 * x) / re) > 0) high = x;
		else low = x;
	}
	return 1 / low ** 2;
}

describe('pipe friction', () => {
	test('solves Colebrook to 1e-12, against halving', () => {
		fc.assert(
			fc.property(between(Math.log(4000), Math.log(1e8)), between(0, 0.05), (logRe, rough) => {
				const re = Math.max(4000, Math.exp(logRe));
				expect(Math.abs(frictionFactor(re, rough) / colebrookByHalving(re, rough) - 1)).toBeLessThan(1e-12);
			}),
			seeded,
		);
	});

	test('is 64/Re while laminar, rough or smooth', () => {
		expect(frictionFactor(1600, 0.03)).toBe(0.04);
	});

	test('does not jump where the flow turns turbulent', () => {
		for (const re of [2000, 4000])
			expect(frictionFactor(re * (1 + 1e-12), 2e-4) / frictionFactor(re, 2e-4)).toBeCloseTo(1, 9);
		expect(frictionFactor(3000, 0)).toBeCloseTo((frictionFactor(2000, 0) + frictionFactor(4000, 0)) / 2, 12);
	});

	test('makes the loss grow with flow everywhere, the change of regime included', () => {
		fc.assert(
			fc.property(between(10, 2e5), between(0, 0.02), (re, rough) => {
				const loss = (r: number) => frictionFactor(r, rough) * r * r;
				expect(loss(re * 1.001)).toBeGreaterThan(loss(re));
			}),
			seeded,
		);
	});

	test('grows with roughness', () => {
		expect(frictionFactor(2e4, 1e-3)).toBeGreaterThan(frictionFactor(2e4, 0));
	});

	test('is refused outside its range', () => {
		expectRefusals((re, rough) => frictionFactor(re!, rough!), { 'Reynolds number': 2e4, 'relative roughness': 1e-3 });
		expectRefusals((v, d, nu) => reynolds(v!, d!, nu!), { velocity: 1, bore: 0.008, viscosity: 5.5e-7 });
		expect(() => frictionFactor(0, 0)).toThrow('Reynolds number');
	});
});

test('ranges are taken to their ends and no further', () => {
	expectRange(rough => frictionFactor(2e4, rough), 'relative roughness', 0, 0.05);
	expect(() => frictionFactor(1e9, 0)).not.toThrow();
	expect(() => frictionFactor(1.001e9, 0)).toThrow('Reynolds number');
});
