import { describe, expect, it } from 'vitest';
import { burnOverSpeed } from '../../src/physics/burn-over-speed.ts';
import { chargeOf } from '../../src/physics/charge.ts';
import { closedCycle } from '../../src/physics/cycle.ts';
import { flameAngle } from '../../src/physics/flame.ts';
import { burnOf, fullLoadCycle, trapped, usualFlame } from '../../src/physics/full-load.ts';
import type { FullLoad } from '../../src/physics/full-load-engine.ts';
import { gammaAt } from '../../src/physics/gas.ts';
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

describe('the burn', () => {
	const burn = (change: Partial<FullLoad>) => burnOf({ ...engine, ...change }, trapped({ ...engine, ...change }));
	const [tenth, nine] = [Math.cbrt(Math.log(10 / 9) / 5), Math.cbrt(Math.log(10) / 5)];

	it('is the usual one, to a percent or two, in the engine that it is usual in', () => {
		const { delay, duration, power } = burn({});
		expect(power).toBe(3);
		expect(Math.abs((delay + tenth * duration) / usualFlame.development - 1)).toBeLessThan(0.02);
		expect(Math.abs(((nine - tenth) * duration) / usualFlame.burn - 1)).toBeLessThan(0.02);
	});

	it('follows speed by each of its own factors', () => {
		const [slow, usual] = [burnOverSpeed(2500), burnOverSpeed(5000)];
		expect(burn({ speed: 2500 }).delay / burn({}).delay).toBeCloseTo(slow.delay / usual.delay, 12);
		expect(burn({ speed: 2500 }).duration / burn({}).duration).toBeCloseTo(slow.duration / usual.duration, 12);
		expect(burn({ speed: 2500 }).power).toBeCloseTo(1 + (2 * slow.exponent) / usual.exponent, 12);
	});

	it('shrinks with boost, starts sooner with a later spark, and grows with leanness', () => {
		expect(burn({ manifoldPressure: 200e3 }).duration).toBeLessThan(0.9 * burn({}).duration);
		expect(burn({ advance: 14 }).delay).toBeLessThan(0.8 * burn({}).delay);
		expect(burn({ advance: 14 }).duration).toBe(burn({}).duration);
		expect(burn({ advance: -10 }).delay).toBe(burn({ advance: 0 }).delay);
		expect(burn({ lambda: 1 }).duration).toBeGreaterThan(burn({}).duration);
		expect(burn({ burn: 1.2 }).duration / burn({}).duration).toBeCloseTo(1.2, 12);
		expect(burn({ burn: 1.2 }).delay / burn({}).delay).toBeCloseTo(1.2, 12);
		// By the gas at the spark, 28 deg before top, and at top: their flame angles, worked out apart.
		const start = trapped(engine);
		const gamma = gammaAt(start.charge.unburnt, 500);
		const at = (crank: number) => {
			const squeeze = start.volume / cylinderVolume(engine.cylinder, crank);
			const pressure = start.pressure * squeeze ** gamma;
			const temperature = start.temperature * squeeze ** (gamma - 1);
			return flameAngle({ pressure, temperature, lambda: 0.87, residual: 0.06, ethanol: 0 }, 0.0884, 0.0884 / 8);
		};
		const { delay, duration } = burn({});
		expect(((nine - tenth) * duration) / 27).toBeCloseTo(at(0) / 0.004961, 9);
		expect((delay + tenth * duration) / 22).toBeCloseTo(at(-28) / 0.006378, 9);
	});

	it('never starts before the spark', () => {
		expect(burn({ advance: 0, manifoldPressure: 400e3, speed: 1500 }).delay).toBeGreaterThanOrEqual(0);
	});
});

describe('the full-load cycle', () => {
	it('is the closed cycle of the air that the engine takes, the heat that this air can burn, a flame that develops first, and Woschni walls', () => {
		const swept = (Math.PI / 4) * 0.1016 ** 2 * 0.0884;
		const air = 0.85 * (99500 / (287.05 * 318)) * swept;
		const fuel = air / (0.87 * 14.7);
		const charge = chargeOf(0.87, 0, 0.06);
		const trace = fullLoadCycle(engine);
		const { delay, duration, power } = burnOf(engine, trapped(engine));
		const byHand = closedCycle({
			cylinder: engine.cylinder,
			speed: 5000,
			shut: -120,
			opens: 120,
			pressure: ((air + fuel) / 0.94) * charge.unburnt.constant * (343 / cylinderVolume(engine.cylinder, -120)),
			temperature: 343,
			charge,
			burn: {
				start: -28 + delay,
				duration,
				power,
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

	it.each([
		[99500, 5000],
		[150e3, 5000],
		[220e3, 5000],
		[150e3, 2000],
		[220e3, 2500],
	])('comes nearer to knock with every degree of advance to 32, at %s Pa and %s rpm', (pressure, speed) => {
		const rising = Array.from({ length: 43 }, (_, i) => knock({ manifoldPressure: pressure, speed, advance: i - 10 }));
		expect(rising).toEqual(rising.toSorted((a, b) => a - b));
	});

	it.each([
		['usual', {}],
		['so late that the pressure peaks before the spark', { advance: -30 }],
		['so early that it peaks after 90 % burnt', { advance: 50 }],
		['boosted', { manifoldPressure: 250e3, advance: 12 }],
	])('ends at 90 %% burnt or past the peak where no more is asked, with the same peak and knock: %s', (_, change) => {
		const whole = fullLoadCycle({ ...engine, ...change });
		const short = fullLoadCycle({ ...engine, ...change, toPeak: true });
		const end = short.angle.length - 1;
		expect(whole.angle.at(-1)).toBeCloseTo(120, 9);
		expect(end).toBe(
			Math.max(
				whole.ninety,
				whole.angle.findIndex(angle => angle > whole.peakAngle),
			),
		);
		expect(short.peakPressure).toBe(whole.peakPressure);
		expect(short.peakAngle).toBe(whole.peakAngle);
		expect(knockIntegral(short, 5000, 92)).toBe(knockIntegral(whole, 5000, 92));
	});

	it('ends where the exhaust opens where 90 % is burnt no sooner', () => {
		expect(fullLoadCycle({ ...engine, advance: -110, toPeak: true }).angle.at(-1)).toBeCloseTo(120, 9);
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
