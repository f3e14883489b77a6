import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ampacity, soldGauges } from '../../src/physics/ampacity.ts';
import { largestFuse, smallestFuse, wireFor } from '../../src/physics/fuse.ts';
import { gaugeArea, wireDrop } from '../../src/physics/wire.ts';
import { between, expectRefusals, seeded } from './spoilt.ts';

describe('a fuse', () => {
	test('guards a 12 gauge wire up to 38 A, so a 35 A fuse does and a 40 A fuse does not', () => {
		const most = largestFuse(ampacity(gaugeArea(12))!);
		expect(most).toBeCloseTo(38.25, 12);
	});

	test('of 15 A carries 12 A for good, exactly', () => {
		expect(smallestFuse(12)).toBe(15);
		expect(smallestFuse(95)).toBe(118.75);
	});
});

describe('wire for a load', () => {
	test('is the thinnest that loses no more than is allowed, with the fuse that carries the load', () => {
		expect(wireFor(12, 4.5, 0.5)).toEqual({ gauge: 10, fuse: 15 });
		expect(wireFor(12, 4.5, wireDrop(12, gaugeArea(10), 4.5)), 'the very drop is allowed').toEqual({
			gauge: 10,
			fuse: 15,
		});
		expect(wireFor(1, 1, 0.5)).toEqual({ gauge: 18, fuse: 2 });
		expect(wireFor(95, 1.5, 0.3)).toEqual({ gauge: 4, fuse: 125 });
	});

	test('is thick enough for its fuse even when the run is short', () => {
		expect(wireFor(28, 0.2, 0.5)).toEqual({ gauge: 12, fuse: 35 });
	});

	test('cannot be had for a starter current over a long way', () => {
		expect(wireFor(200, 60, 0.1)).toBeUndefined();
		expect(wireFor(900, 1, 0.5)).toBeUndefined();
	});

	test('keeps all three rules, and the next thinner gauge breaks one', () => {
		fc.assert(
			fc.property(between(0.5, 200), between(0.1, 12), between(0.1, 1), (load, run, drop) => {
				const wire = wireFor(load, run, drop);
				if (!wire) return;
				const keeps = (gauge: number) =>
					wireDrop(load, gaugeArea(gauge), run) <= drop && wire.fuse <= largestFuse(ampacity(gaugeArea(gauge))!);
				expect(wire.fuse).toBeGreaterThanOrEqual(smallestFuse(load));
				expect(keeps(wire.gauge)).toBe(true);
				const thinner = soldGauges[soldGauges.indexOf(wire.gauge) - 1];
				if (thinner !== undefined) expect(keeps(thinner)).toBe(false);
			}),
			seeded,
		);
	});
});

test('what cannot be is refused by name', () => {
	expectRefusals(a => largestFuse(a!), { ampacity: 45 });
	expectRefusals(a => smallestFuse(a!), { load: 12 });
	expectRefusals((a, l, v) => wireFor(a!, l!, v!), { load: 12, 'wire length': 4, 'allowed drop': 0.5 });
});
