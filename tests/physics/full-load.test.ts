import { describe, expect, it } from 'vitest';
import { chargeOf } from '../../src/physics/charge.ts';
import { closedCycle } from '../../src/physics/cycle.ts';
import { burnAngles, type FullLoad, fullLoadCycle, trapped, usualFlame } from '../../src/physics/full-load.ts';
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
	fuel: { stoichiometricRatio: 14.7, heatingValue: 43.44e6, ethanol: 0 },
	advance: 28,
};

const peak = (change: Partial<FullLoad>) => fullLoadCycle({ ...engine, ...change }).peakPressure;
const knock = (change: Partial<FullLoad>) =>
	knockIntegral(fullLoadCycle({ ...engine, ...change }), change.speed ?? engine.speed, 92);

describe('the angles of the flame', () => {
	const angles = (change: Partial<FullLoad>) => burnAngles({ ...engine, ...change }, trapped({ ...engine, ...change }));

	it('are the usual ones, to a percent or two, in the engine that they are usual in', () => {
		const { development, burn } = angles({});
		expect(development / usualFlame.development).toBeCloseTo(1, 1);
		expect(burn / usualFlame.burn).toBeCloseTo(1, 1);
		expect(Math.abs(development / usualFlame.development - 1)).toBeLessThan(0.02);
		expect(Math.abs(burn / usualFlame.burn - 1)).toBeLessThan(0.02);
	});

	it('shrink at less speed by its third root, with boost and with a later spark, and grow with leanness', () => {
		expect(angles({ speed: 2500 }).burn / angles({}).burn).toBeCloseTo(0.5 ** (1 / 3), 9);
		expect(angles({ speed: 2500 }).development / angles({}).development).toBeCloseTo(0.5 ** (1 / 3), 9);
		expect(angles({ manifoldPressure: 200e3 }).burn).toBeLessThan(0.9 * angles({}).burn);
		expect(angles({ advance: 14 }).development).toBeLessThan(0.95 * angles({}).development);
		expect(angles({ advance: 14 }).burn).toBe(angles({}).burn);
		expect(angles({ advance: -10 }).development).toBe(angles({ advance: 0 }).development);
		expect(angles({ lambda: 1 }).burn).toBeGreaterThan(angles({}).burn);
		expect(angles({ burn: 1.2 }).burn / angles({}).burn).toBeCloseTo(1.2, 12);
		expect(angles({ burn: 1.2 }).development / angles({}).development).toBeCloseTo(1.2, 12);
	});
});

describe('the full-load cycle', () => {
	it('is the closed cycle of the air that the engine takes, the heat that this air can burn, a flame that develops first, and Woschni walls', () => {
		const swept = (Math.PI / 4) * 0.1016 ** 2 * 0.0884;
		const air = 0.85 * (99500 / (287.05 * 318)) * swept;
		const fuel = air / (0.87 * 14.7);
		const charge = chargeOf(0.87, 0, 0.06);
		const whole = (Math.cbrt(Math.log(10)) - Math.cbrt(Math.log(10 / 9))) / Math.cbrt(5);
		const trace = fullLoadCycle(engine);
		const { development, burn } = burnAngles(engine, trapped(engine));
		const duration = burn / whole;
		const byHand = closedCycle({
			cylinder: engine.cylinder,
			speed: 5000,
			shut: -120,
			opens: 120,
			pressure: ((air + fuel) / 0.94) * charge.unburnt.constant * (343 / cylinderVolume(engine.cylinder, -120)),
			temperature: 343,
			charge,
			burn: {
				start: -28 + development - Math.cbrt(Math.log(10 / 9) / 5) * duration,
				duration,
				heat: fuel * (43.44e6 - charge.kept) * 0.97,
			},
			walls: { temperature: 450, film: 'woschni' },
		});
		expect(trace.peakPressure / byHand.peakPressure).toBeCloseTo(1, 7);
		expect(trace.work / byHand.work).toBeCloseTo(1, 7);
	});

	it('burns no more heat than the air allows when rich, less what stays in CO and H2, and less when lean', () => {
		const work = (lambda: number) => fullLoadCycle({ ...engine, lambda }).work;
		expect(work(0.8) / work(1)).toBeGreaterThan(0.93);
		expect(work(0.8) / work(1)).toBeLessThan(1);
		expect(work(0.8) / work(0.87)).toBeLessThan(1);
		expect(work(1.2)).toBeLessThan(0.9 * work(1));
	});

	it('peaks higher with boost, advance, ratio and a faster burn', () => {
		const base = peak({});
		expect(peak({ manifoldPressure: 150e3 })).toBeGreaterThan(base);
		expect(peak({ advance: 34 })).toBeGreaterThan(base);
		expect(peak({ cylinder: { ...engine.cylinder, ratio: 10 } })).toBeGreaterThan(base);
		expect(peak({ burn: 0.8 })).toBeGreaterThan(base);
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

	it('runs to 90 % burnt alone where no more is asked, with the same knock', () => {
		for (const advance of [28, -10]) {
			const short = fullLoadCycle({ ...engine, advance, toNinety: true });
			expect(short.ninety).toBe(short.angle.length - 1);
			expect(knockIntegral(short, 5000, 92) / knock({ advance })).toBeCloseTo(1, 9);
		}
		expect(fullLoadCycle({ ...engine, advance: -110, toNinety: true }).angle.at(-1)).toBeCloseTo(120, 9);
	});

	it('takes a spark after top dead center', () => {
		expect(peak({ advance: -10 })).toBeLessThan(peak({ advance: 0 }));
	});

	it.each([
		['manifold pressure', { manifoldPressure: 0 }],
		['charge temperature', { chargeTemperature: 0 }],
		['volumetric efficiency', { volumetricEfficiency: 0 }],
		['lambda', { lambda: 0.4 }],
		['intake closing', { intakeCloses: 130 }],
		['stoichiometric ratio', { fuel: { stoichiometricRatio: 0, heatingValue: 43e6, ethanol: 0 } }],
		['heating value', { fuel: { stoichiometricRatio: 14.7, heatingValue: 0, ethanol: 0 } }],
		['angle of the spark', { advance: 125 }],
		['burn duration', { burn: 0 }],
	] as const)('refuses what no engine has: %s', (message, change) => {
		expect(() => fullLoadCycle({ ...engine, ...change })).toThrow(message);
	});
});
