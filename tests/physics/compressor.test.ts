import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
	compressorOutletTemperature,
	cooledTemperature,
	correctedFlow,
	pressureRatio,
} from '../../src/physics/compressor.ts';
import { between, expectRange, expectRefusals, seeded } from './spoilt.ts';

describe('a compressor', () => {
	test('heats nothing when it does nothing', () => {
		expect(compressorOutletTemperature(300, 1, 0.7)).toBe(300);
	});

	test('heats more with more pressure, less with more efficiency, and never under the ideal', () => {
		fc.assert(
			fc.property(between(250, 330), between(1.01, 6), between(0.3, 0.95), (inlet, ratio, efficiency) => {
				const outlet = compressorOutletTemperature(inlet, ratio, efficiency);
				expect(compressorOutletTemperature(inlet, ratio * 1.1, efficiency)).toBeGreaterThan(outlet);
				expect(compressorOutletTemperature(inlet, ratio, efficiency * 1.05)).toBeLessThan(outlet);
				expect(outlet).toBeGreaterThanOrEqual(inlet * ratio ** (2 / 7));
			}),
			seeded,
		);
	});

	test('works harder for a cooler and for a filter in the way', () => {
		const bare = { manifold: 2e5, coolerLoss: 0, ambient: 1e5, inletLoss: 0 };
		expect(pressureRatio(bare)).toBe(2);
		expect(pressureRatio({ ...bare, coolerLoss: 1e4 })).toBe(2.1);
		expect(pressureRatio({ ...bare, inletLoss: 2e4 })).toBe(2.5);
	});

	test('shows its own flow on the map day, and more on a hot or a high one', () => {
		expect(correctedFlow(0.4, 298.15, 1e5)).toBe(0.4);
		expect(correctedFlow(0.4, 320, 1e5)).toBeGreaterThan(0.4);
		expect(correctedFlow(0.4, 298.15, 8e4)).toBe(0.5);
	});
});

describe('an intercooler', () => {
	test('of no effect leaves the air as it is, a perfect one brings it to the cooling air', () => {
		expect(cooledTemperature(300, 400, 0)).toBe(400);
		expect(cooledTemperature(300, 400, 1)).toBe(300);
		expect(cooledTemperature(300, 400, 0.7)).toBeCloseTo(330, 10);
	});
});

test('what cannot be is refused by name', () => {
	expectRefusals((t, r, e) => compressorOutletTemperature(t!, r!, e!), {
		'inlet temperature': 300,
		'pressure ratio': 2,
		'compressor efficiency': 0.7,
	});
	expectRefusals((c, h, e) => cooledTemperature(c!, h!, e!), {
		'cooling air temperature': 300,
		'entering temperature': 400,
		'intercooler effectiveness': 0.7,
	});
	expectRefusals((m, t, p) => correctedFlow(m!, t!, p!), {
		'air flow': 0.4,
		'inlet temperature': 300,
		'inlet pressure': 1e5,
	});
	expectRefusals(
		(manifold, coolerLoss, inletLoss) =>
			pressureRatio({ manifold: manifold!, coolerLoss: coolerLoss!, ambient: 1e5, inletLoss: inletLoss! }),
		{ 'manifold pressure': 2e5, 'intercooler loss': 7e3, 'inlet loss': 1e3 },
	);
	expect(() => pressureRatio({ manifold: 2e5, coolerLoss: 0, ambient: 1e3, inletLoss: 1e3 })).toThrow(
		'ambient pressure',
	);
	expect(() => compressorOutletTemperature(300, 2, 0)).toThrow('compressor efficiency');
});

test('ranges are taken to their ends and no further', () => {
	expectRange(ratio => compressorOutletTemperature(300, ratio, 0.7), 'pressure ratio', 1, 20);
	expectRange(share => cooledTemperature(300, 400, share), 'intercooler effectiveness', 0, 1);
	expect(() => compressorOutletTemperature(300, 2, 1.001)).toThrow('compressor efficiency');
});
