import { describe, expect, test } from 'vitest';
import { bypassShare, exhaustGas, orificeFlow } from '../../src/physics/wastegate.ts';
import { expectRefusals } from './spoilt.ts';

describe('a hole', () => {
	test('passes no more once it is choked', () => {
		const flow = (behind: number) => orificeFlow(1e-3, 200e3, behind, 1100);
		expect(flow(50e3)).toBeCloseTo(flow(100e3), 12);
		expect(flow(150e3)).toBeLessThan(flow(100e3));
		expect(flow(200e3)).toBe(0);
	});

	test('passes what energy and an isentrope make of it', () => {
		// Velocity from the drop in enthalpy, density along the isentrope: no flow function in it.
		const [before, behind, temperature] = [180e3, 120e3, 1000];
		const { gamma, gasConstant } = exhaustGas;
		const cold = temperature * (behind / before) ** ((gamma - 1) / gamma);
		const speed = Math.sqrt(2 * ((gamma * gasConstant) / (gamma - 1)) * (temperature - cold));
		const density = behind / (gasConstant * cold);
		expect(orificeFlow(1e-3, before, behind, temperature)).toBeCloseTo(0.7e-3 * speed * density, 9);
	});

	test('refuses what is no flow', () => {
		expectRefusals((area, before, temperature) => orificeFlow(area!, before!, 0, temperature!), {
			area: 1e-3,
			'pressure before': 2e5,
			temperature: 1000,
		});
		expect(() => orificeFlow(1e-3, 1e5, 2e5, 1000)).toThrow('pressure behind');
	});
});

describe('a turbine', () => {
	const turbine = { before: 190e3, behind: 110e3, temperature: 1150, efficiency: 0.7 };

	test('on the rest of the exhaust does the work of the compressor', () => {
		const through = 1.07 * (1 - bypassShare(60, turbine));
		const { gamma, heat } = exhaustGas;
		const cold = 1150 * (110 / 190) ** ((gamma - 1) / gamma);
		expect(through * heat * 0.7 * (1150 - cold)).toBeCloseTo(1005 * 60, 6);
	});

	test('that needs all of it leaves nothing to the gate', () => {
		expect(bypassShare(400, turbine)).toBe(0);
		expect(bypassShare(60, { ...turbine, behind: 190e3 })).toBe(0);
	});

	test('refuses what is no turbine', () => {
		expectRefusals(
			(airWarming, temperature, efficiency) =>
				bypassShare(airWarming!, { ...turbine, temperature: temperature!, efficiency: efficiency! }),
			{
				'warming across the compressor': 60,
				temperature: 1150,
				'turbine efficiency': 0.7,
			},
		);
		expect(() => bypassShare(60, { ...turbine, behind: 0 })).toThrow('pressure behind');
		expect(() => bypassShare(60, { ...turbine, behind: 2e5 })).toThrow('pressure behind');
	});
});
