import { describe, expect, test } from 'vitest';
import {
	airFlow,
	displacement,
	idleAir,
	meanEffectivePressure,
	meanPistonSpeed,
	powerFromAir,
	torque,
	usualAirEfficiency,
} from '../../src/physics/airflow.ts';
import { dryAirDensity } from '../../src/physics/atmosphere.ts';
import { compressorOutletTemperature, cooledTemperature, pressureRatio } from '../../src/physics/compressor.ts';
import { expectRange, expectRefusals } from './spoilt.ts';

describe('what an engine breathes', () => {
	const usual = { volumetricEfficiency: 0.85, density: 1.1, displacement: 5e-3, rpm: 5500 };

	test('is its displacement every two turns when it fills itself wholly', () => {
		expect(airFlow({ volumetricEfficiency: 1, density: 1, displacement: 6e-3, rpm: 120 })).toBeCloseTo(6e-3, 15);
	});

	test('doubles with each of its four causes', () => {
		for (const cause of ['density', 'displacement', 'rpm', 'volumetricEfficiency'] as const)
			expect(airFlow({ ...usual, [cause]: 2 * usual[cause] }) / airFlow(usual)).toBeCloseTo(2, 12);
	});

	test('at idle is 19.5 kg/h for five liters', () => {
		expect(idleAir.usual * 5e-3 * 3600).toBeCloseTo(19.5, 12);
	});
});

describe('power', () => {
	const burning = { airFlow: 0.4, stoichiometricRatio: 14.7, heatingValue: 43.44e6, airEfficiency: 0.3 };

	test('is the air, over the stoichiometric ratio, times heating value and efficiency', () => {
		expect(powerFromAir(burning)).toBeCloseTo((0.4 / 14.7) * 43.44e6 * 0.3, 6);
	});

	test('comes out in the range of practice: 5 litres, 20 psi, intercooled: 450 to 560 hp', () => {
		const [ambient, manifold, hotDay] = [99.5e3, 99.5e3 + 138e3, 308];
		const ratio = pressureRatio({ manifold, coolerLoss: 7e3, ambient, inletLoss: 1e3 });
		const charge = cooledTemperature(hotDay, compressorOutletTemperature(hotDay, ratio, 0.7), 0.65);
		const density = dryAirDensity(manifold, charge);
		const air = airFlow({ volumetricEfficiency: 0.87, density, displacement: 4.95e-3, rpm: 5350 });
		const power = powerFromAir({ ...burning, airFlow: air, airEfficiency: usualAirEfficiency.boosted }) / 745.7;
		expect(power).toBeGreaterThan(450);
		expect(power).toBeLessThan(560);
	});

	test('is torque times speed, and mean effective pressure times volume every two turns', () => {
		const power = 300e3;
		expect((torque(power, 5500) * 2 * Math.PI * 5500) / 60).toBeCloseTo(power, 6);
		expect((meanEffectivePressure(power, 5e-3, 5500) * 5e-3 * 5500) / 120).toBeCloseTo(power, 6);
	});
});

test('a piston covers two strokes a turn', () => {
	expect(meanPistonSpeed(0.09, 6000)).toBeCloseTo(18, 12);
});

test('what cannot be is refused by name', () => {
	expectRefusals((n, b, s) => displacement(n!, b!, s!), { cylinders: 8, bore: 0.1, stroke: 0.09 });
	expectRefusals(
		(volumetricEfficiency, density, displacement, rpm) =>
			airFlow({
				volumetricEfficiency: volumetricEfficiency!,
				density: density!,
				displacement: displacement!,
				rpm: rpm!,
			}),
		{ 'volumetric efficiency': 0.85, density: 1.1, displacement: 5e-3, rpm: 5500 },
	);
	expectRefusals(
		(airFlow, stoichiometricRatio, heatingValue, airEfficiency) =>
			powerFromAir({
				airFlow: airFlow!,
				stoichiometricRatio: stoichiometricRatio!,
				heatingValue: heatingValue!,
				airEfficiency: airEfficiency!,
			}),
		{ 'air flow': 0.4, 'stoichiometric ratio': 14.7, 'heating value': 43e6, 'air efficiency': 0.3 },
	);
	expectRefusals((s, n) => meanPistonSpeed(s!, n!), { stroke: 0.09, rpm: 6000 });
	expectRefusals((p, n) => torque(p!, n!), { power: 3e5, rpm: 6000 });
	expectRefusals((p, v, n) => meanEffectivePressure(p!, v!, n!), { power: 3e5, displacement: 5e-3, rpm: 6000 });
});

test('ranges are taken to their ends and no further', () => {
	const air = { density: 1.1, displacement: 5e-3, rpm: 5500 };
	expectRange(volumetricEfficiency => airFlow({ ...air, volumetricEfficiency }), 'volumetric efficiency', 0, 2);
	const burning = { airFlow: 0.4, stoichiometricRatio: 14.7, heatingValue: 43.44e6 };
	expectRange(airEfficiency => powerFromAir({ ...burning, airEfficiency }), 'air efficiency', 0, 1);
});
