import psychrolib from 'psychrolib';
import { describe, expect, test } from 'vitest';
import { ambientPressure, dryAirDensity, moistAirDensity, saturationPressure } from '../../src/physics/atmosphere.ts';
import { fahrenheit, foot, poundMass, psi, published } from './published.ts';

const celsius = 273.15;
const slug = (poundMass * 9.80665) / foot;

published({
	what: 'standard pressure in psi by altitude in ft',
	source: 'US Standard Atmosphere Air Properties, imperial table',
	obtained: 'read',
	within: { abs: 0.001, why: 'last printed digit' },
	rows: [
		[0, 14.696],
		[5000, 12.228],
		[10000, 10.108],
		[15000, 8.297],
	],
	found: altitude => ambientPressure(altitude! * foot) / psi,
});

published({
	what: 'standard density in slug/ft3 by altitude in ft and its own temperature in degF',
	source: 'US Standard Atmosphere Air Properties, imperial table',
	obtained: 'read',
	within: { rel: 5e-4, why: 'last printed digit' },
	rows: [
		[0, 59.0, 0.002377],
		[10000, 23.36, 0.001756],
		[15000, 5.55, 0.001496],
	],
	found: (altitude, temperature) =>
		dryAirDensity(ambientPressure(altitude! * foot), fahrenheit(temperature!)) / (slug / foot ** 3),
});

published({
	what: 'standard pressure in Pa by altitude in m',
	source: 'python3-fluids 1.0.22: ATMOSPHERE_1976(m).P',
	obtained: 'computed',
	within: { rel: 1e-5, why: "the same layer with the library's own constants" },
	rows: [
		[-100, 102532.1],
		[0, 101325],
		[500, 95461.29],
		[1609.344, 83431.77],
		[2000, 79501.42],
		[4000, 61660.44],
		[-91.44, 102428.33],
		[152.4, 99507.5842],
		[457.2, 95952.1675],
		[762, 92500.6488],
		[2133.6, 78192.3424],
		[2743.2, 72439.3359],
		[3657.6, 64458.3697],
	],
	found: altitude => ambientPressure(altitude!),
});

published({
	what: 'standard density in kg/m3 by altitude in m and its own temperature in K',
	source: 'python3-fluids 1.0.22: ATMOSPHERE_1976(m).rho and .T',
	obtained: 'computed',
	within: { rel: 3e-5, why: 'gas constant to five digits' },
	rows: [
		[-100, 288.8, 1.236803],
		[0, 288.15, 1.224999],
		[500, 284.9003, 1.167273],
		[1000, 281.651, 1.111659],
		[1609.344, 277.6919, 1.046661],
		[3000, 268.6592, 0.9092539],
	],
	found: (altitude, temperature) => dryAirDensity(ambientPressure(altitude!), temperature!),
});

published({
	what: 'saturation pressure in hPa by temperature in degC',
	source: 'CRC Handbook of Chemistry and Physics, 62nd ed., saturated water vapour, reprinted by the UN University',
	obtained: 'read',
	within: { rel: 0.0015, why: 'older fit; the table prints 3 or 4 digits' },
	rows: [
		[0, 6.11],
		[10, 12.28],
		[20, 23.4],
		[30, 42.48],
		[34, 53.26],
	],
	found: temperature => saturationPressure(temperature! + celsius) / 100,
});

published({
	what: 'saturation pressure over ice in mmHg by temperature in degC',
	source: 'vapour pressure of water over ice, Table A-1 of a hygrometer manual',
	obtained: 'read',
	within: { rel: 0.003, why: 'half a digit is 0.16 %, and an older fit' },
	rows: [
		[-29, 0.317],
		[-27, 0.389],
		[-25, 0.476],
		[-22, 0.64],
	],
	found: temperature => saturationPressure(temperature! + celsius) / 133.322387415,
});

published({
	what: 'moist air density in kg/m3 by degC, relative humidity, Pa',
	source: 'psychrolib 1.1.1: GetMoistAirDensity with GetHumRatioFromRelHum',
	obtained: 'computed',
	within: { rel: 1e-4, why: 'gas constant to five digits' },
	rows: [
		[25, 0.5, 101325, 1.176958],
		[20, 0.5, 101325, 1.198898],
		[35, 0.6, 101325, 1.131104],
		[40, 0.3, 101325, 1.11793],
		[30, 0.4, 83432, 0.9514246],
		[25, 0, 99000, 1.156791],
		[-10, 0.5, 101325, 1.340779],
	],
	found: (temperature, humidity, pressure) => moistAirDensity(temperature! + celsius, humidity!, pressure!),
});

describe('against psychrolib itself', () => {
	psychrolib.SetUnitSystem(psychrolib.SI);

	test('saturation pressure agrees over ice and over water', () => {
		for (let t = -60; t <= 120; t += 2.5)
			expect(saturationPressure(t + celsius) / psychrolib.GetSatVapPres(t)).toBeCloseTo(1, 7);
	});

	test('moist air density agrees over every day that a car sees', () => {
		for (let t = -40; t <= 55; t += 5)
			for (const humidity of [0.1, 0.5, 1])
				for (const pressure of [60e3, 85e3, 101325]) {
					const ratio = psychrolib.GetHumRatioFromRelHum(t, humidity, pressure);
					const theirs = psychrolib.GetMoistAirDensity(t, ratio, pressure);
					expect(Math.abs(moistAirDensity(t + celsius, humidity, pressure) / theirs - 1)).toBeLessThan(1e-4);
				}
	});

	test('standard pressure agrees to 3e-4: it takes altitude as geopotential height', () => {
		for (let altitude = 0; altitude <= 3000; altitude += 300)
			expect(Math.abs(ambientPressure(altitude) / psychrolib.GetStandardAtmPressure(altitude) - 1)).toBeLessThan(3e-4);
	});
});
