import { describe, expect, it } from 'vitest';
import { closedCycle } from '../../src/physics/cycle.ts';
import { type FullLoad, fullLoadCycle } from '../../src/physics/full-load.ts';
import { petrolGamma } from '../../src/physics/gas.ts';
import { knockIntegral } from '../../src/physics/knock.ts';
import { cylinderVolume } from '../../src/physics/slider-crank.ts';

const engine: FullLoad = {
	cylinder: { bore: 0.1016, stroke: 0.0884, rod: 0.15, ratio: 9 },
	speed: 5000,
	intakeCloses: 60,
	manifoldPressure: 99500,
	chargeTemperature: 318,
	volumetricEfficiency: 0.85,
	lambda: 0.87,
	fuel: { stoichiometricRatio: 14.7, heatingValue: 43.44e6 },
	advance: 28,
};

const peak = (change: Partial<FullLoad>) => fullLoadCycle({ ...engine, ...change }).peakPressure;
const knock = (change: Partial<FullLoad>) =>
	knockIntegral(fullLoadCycle({ ...engine, ...change }), change.speed ?? engine.speed, 92);

describe('the full-load cycle', () => {
	it('is the closed cycle of the air that the engine takes, the heat that this air can burn, and Woschni walls', () => {
		const swept = (Math.PI / 4) * 0.1016 ** 2 * 0.0884;
		const air = 0.85 * (99500 / (287.05 * 318)) * swept;
		const mass = (air * (1 + 1 / (0.87 * 14.7))) / 0.94;
		const tenToNinety = (Math.cbrt(Math.log(10)) - Math.cbrt(Math.log(10 / 9))) / Math.cbrt(5);
		const trace = fullLoadCycle(engine);
		const byHand = closedCycle({
			cylinder: engine.cylinder,
			speed: 5000,
			shut: -120,
			opens: 120,
			pressure: (mass * 287.05 * 343) / cylinderVolume(engine.cylinder, -120),
			temperature: 343,
			gamma: petrolGamma,
			burn: { start: -28, duration: 27 / tenToNinety, heat: (air / 14.7) * 43.44e6 * 0.97 },
			walls: { temperature: 450, film: 'woschni' },
		});
		expect(trace.peakPressure / byHand.peakPressure).toBeCloseTo(1, 9);
		expect(trace.work / byHand.work).toBeCloseTo(1, 9);
	});

	it('burns no more heat than the air allows when rich, and less when lean', () => {
		const work = (lambda: number) => fullLoadCycle({ ...engine, lambda }).work;
		expect(work(0.8) / work(1)).toBeGreaterThan(0.98);
		expect(work(0.8) / work(1)).toBeLessThan(1.02);
		expect(work(1.2)).toBeLessThan(0.9 * work(1));
	});

	it('peaks higher with boost, advance, ratio and a faster burn', () => {
		const base = peak({});
		expect(peak({ manifoldPressure: 150e3 })).toBeGreaterThan(base);
		expect(peak({ advance: 34 })).toBeGreaterThan(base);
		expect(peak({ cylinder: { ...engine.cylinder, ratio: 10 } })).toBeGreaterThan(base);
		expect(peak({ burnAngle: 22 })).toBeGreaterThan(base);
	});

	it('knocks sooner with boost, heat, advance and less speed', () => {
		const base = knock({});
		expect(knock({ manifoldPressure: 150e3 })).toBeGreaterThan(base);
		expect(knock({ chargeTemperature: 350 })).toBeGreaterThan(base);
		expect(knock({ advance: 34 })).toBeGreaterThan(base);
		expect(knock({ speed: 2500 })).toBeGreaterThan(1.5 * base);
	});

	it.each([99500, 150e3, 220e3])('comes nearer to knock with every degree of advance to 32, at %s Pa', pressure => {
		const rising = Array.from({ length: 43 }, (_, i) => knock({ manifoldPressure: pressure, advance: i - 10 }));
		expect(rising).toEqual(rising.toSorted((a, b) => a - b));
	});

	it('takes a spark after top dead centre', () => {
		expect(peak({ advance: -10 })).toBeLessThan(peak({ advance: 0 }));
	});

	it.each([
		['manifold pressure', { manifoldPressure: 0 }],
		['charge temperature', { chargeTemperature: 0 }],
		['volumetric efficiency', { volumetricEfficiency: 0 }],
		['lambda', { lambda: 0.4 }],
		['intake closing', { intakeCloses: 130 }],
		['stoichiometric ratio', { fuel: { stoichiometricRatio: 0, heatingValue: 43e6 } }],
		['heating value', { fuel: { stoichiometricRatio: 14.7, heatingValue: 0 } }],
		['angle of the spark', { advance: 125 }],
		['burn duration', { burnAngle: 0 }],
	] as const)('refuses what no engine has: %s', (message, change) => {
		expect(() => fullLoadCycle({ ...engine, ...change })).toThrow(message);
	});
});
