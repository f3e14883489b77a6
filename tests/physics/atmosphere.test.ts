import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ambientPressure, dryAirDensity, moistAirDensity, saturationPressure } from '../../src/physics/atmosphere.ts';
import { between, expectRange, expectRefusals, seeded } from './spoilt.ts';

describe('air', () => {
	test('thins with altitude', () => {
		fc.assert(
			fc.property(between(-500, 10900), between(1, 100), (altitude, more) => {
				expect(ambientPressure(altitude + more)).toBeLessThan(ambientPressure(altitude));
			}),
			seeded,
		);
	});

	test('is lighter when hot, when humid and when high', () => {
		expect(moistAirDensity(310, 0.5, 1e5)).toBeLessThan(moistAirDensity(300, 0.5, 1e5));
		expect(moistAirDensity(310, 0.9, 1e5)).toBeLessThan(moistAirDensity(310, 0.5, 1e5));
		expect(moistAirDensity(310, 0.5, 9e4)).toBeLessThan(moistAirDensity(310, 0.5, 1e5));
	});

	test('without humidity is dry air', () => {
		fc.assert(
			fc.property(between(233, 330), between(5e4, 1.1e5), (temperature, pressure) => {
				expect(moistAirDensity(temperature, 0, pressure)).toBeCloseTo(dryAirDensity(pressure, temperature), 12);
			}),
			seeded,
		);
	});

	test('holds more vapour the warmer it is, without a jump at the triple point', () => {
		for (let t = 174; t < 473; t++) expect(saturationPressure(t)).toBeGreaterThan(saturationPressure(t - 0.5));
		expect(saturationPressure(273.16) / saturationPressure(273.1600001)).toBeCloseTo(1, 7);
	});
});

describe('air refuses', () => {
	test('what no weather has', () => {
		expectRefusals(altitude => ambientPressure(altitude!), { altitude: 500 });
		expectRefusals((p, t) => dryAirDensity(p!, t!), { pressure: 1e5, temperature: 300 });
		expectRefusals(t => saturationPressure(t!), { temperature: 300 });
		expectRefusals((t, h, p) => moistAirDensity(t!, h!, p!), { temperature: 300, humidity: 0.5, pressure: 1e5 });
	});

	test('a pressure that its own vapour fills, to the last of it', () => {
		expect(() => moistAirDensity(370, 1, 5e4)).toThrow("above the vapor's");
		expect(() => moistAirDensity(300, 1, saturationPressure(300))).toThrow("above the vapor's");
	});
});

test('ranges are taken to their ends and no further', () => {
	expectRange(ambientPressure, 'altitude', -500, 11000);
	expectRange(saturationPressure, 'temperature', 173.15, 473.15);
	expectRange(humidity => moistAirDensity(300, humidity, 1e5), 'humidity', 0, 1);
});
