import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { copperResistance, gaugeArea, wireDrop } from '../../src/physics/wire.ts';
import { between, expectRange, expectRefusals, seeded } from './spoilt.ts';

describe('wire gauges', () => {
	test('are 10.4 mm2 at 7 gauge and halve their area every three sizes', () => {
		expect(gaugeArea(7) * 1e6).toBeCloseTo(10.55, 2);
		for (let gauge = -3; gauge <= 36; gauge++)
			expect(gaugeArea(gauge) / gaugeArea(gauge + 3)).toBeCloseTo(92 ** (2 / 13), 12);
	});

	test('are thicker the smaller the number, 0000 the thickest', () => {
		expect(gaugeArea(-3) * 1e6).toBeCloseTo(107.2, 1);
		expect(gaugeArea(-3)).toBeGreaterThan(gaugeArea(0));
	});
});

describe('volts lost in a wire', () => {
	test('are those of 1 mm2: 17.24 mV for each A and m, out and back twice that', () => {
		expect(copperResistance(1e-6, 1)).toBeCloseTo(1 / 58, 15);
		expect(wireDrop(10, 1e-6, 3)).toBeCloseTo((10 * 2 * 3) / 58, 12);
	});

	test('grow with current, length and heat, and fall with area', () => {
		fc.assert(
			fc.property(between(0.1, 200), between(5e-7, 1e-4), between(0.1, 20), between(250, 400), (i, a, l, t) => {
				const drop = wireDrop(i, a, l, t);
				expect(wireDrop(2 * i, a, l, t) / drop).toBeCloseTo(2, 10);
				expect(wireDrop(i, 2 * a, l, t) / drop).toBeCloseTo(0.5, 10);
				expect(wireDrop(i, a, 2 * l, t) / drop).toBeCloseTo(2, 10);
				expect(wireDrop(i, a, l, t + 10)).toBeGreaterThan(drop);
			}),
			seeded,
		);
	});
});

test('what cannot be is refused by name', () => {
	expectRefusals(g => gaugeArea(g!), { 'wire gauge': 12 });
	expectRefusals((a, l, t) => copperResistance(a!, l!, t!), {
		'wire area': 1e-6,
		'wire length': 3,
		'wire temperature': 300,
	});
	expectRefusals((i, a, l) => wireDrop(i!, a!, l!), { current: 10, 'wire area': 1e-6, 'wire length': 3 });
});

test('ranges are taken to their ends and no further', () => {
	expectRange(gaugeArea, 'wire gauge', -3, 40);
	expectRange(temperature => copperResistance(1e-6, 1, temperature), 'wire temperature', 200, 500);
});
