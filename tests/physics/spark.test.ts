import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cylinderVolume } from '../../src/physics/slider-crank.ts';
import { gasDensityAtSpark, requiredVoltage, sparkCapacity, sparkMargin } from '../../src/physics/spark.ts';

const seeded = { seed: 27, numRuns: 200 };
const cylinder = { bore: 0.1, stroke: 0.09, rod: 0.153, ratio: 9 };
const air = { pressure: 101325, temperature: 293 };
const volts = fc.double({ min: 5000, max: 60000, noNaN: true });

describe('gas density at the spark', () => {
	it('is the manifold density times the squeeze from intake closing to spark, and nothing else', () => {
		const squeeze = cylinderVolume(cylinder, -130) / cylinderVolume(cylinder, -20);
		expect(gasDensityAtSpark(cylinder, air, 50, 20)).toBeCloseTo(squeeze, 12);
		expect(gasDensityAtSpark(cylinder, { pressure: 202650, temperature: 586 }, 50, 20)).toBeCloseTo(squeeze, 12);
	});

	it('grows with pressure, with later spark up to the top, with earlier intake closing, and falls with heat', () => {
		const base = gasDensityAtSpark(cylinder, air, 50, 20);
		expect(gasDensityAtSpark(cylinder, { ...air, pressure: 2e5 }, 50, 20)).toBeGreaterThan(base);
		expect(gasDensityAtSpark(cylinder, air, 50, 10)).toBeGreaterThan(base);
		expect(gasDensityAtSpark(cylinder, air, 40, 20)).toBeGreaterThan(base);
		expect(gasDensityAtSpark(cylinder, { ...air, temperature: 330 }, 50, 20)).toBeLessThan(base);
	});

	it('refuses air without pressure or heat, and angles that no engine has', () => {
		expect(() => gasDensityAtSpark(cylinder, { ...air, pressure: 0 }, 50, 20)).toThrow('manifold pressure');
		expect(() => gasDensityAtSpark(cylinder, { ...air, temperature: -1 }, 50, 20)).toThrow('charge temperature');
		expect(() => gasDensityAtSpark(cylinder, air, 130, 20)).toThrow('intake closing');
		expect(() => gasDensityAtSpark(cylinder, air, 50, 61)).toThrow('spark advance');
	});
});

describe('required voltage', () => {
	it('asks the product of density and gap alone, and always more for more', () => {
		const any = fc.double({ min: 0.5, max: 40, noNaN: true });
		fc.assert(
			fc.property(any, any, (density, gap) => {
				const asked = requiredVoltage(density, gap / 1000);
				expect(requiredVoltage(gap, density / 1000)).toBeCloseTo(asked, 6);
				expect(requiredVoltage(density * 1.01, gap / 1000)).toBeGreaterThan(asked);
			}),
			seeded,
		);
	});

	it('refuses a gap of nothing', () => {
		expect(() => requiredVoltage(6, 0)).toThrow('spark gap');
		expect(() => requiredVoltage(0, 0.001)).toThrow('gas density');
	});
});

describe('spark capacity', () => {
	it('is the usual band for a coil that nobody has tried', () => {
		expect(sparkCapacity(null, null)).toEqual({ usual: 27500, low: 25600, high: 29700, disagree: false });
	});

	it('is only ever raised by a proven voltage', () => {
		expect(sparkCapacity(20000, null)).toEqual(sparkCapacity(null, null));
		expect(sparkCapacity(28000, null)).toEqual({ usual: 28000, low: 28000, high: 29700, disagree: false });
		expect(sparkCapacity(35000, null)).toEqual({ usual: 35000, low: 35000, high: 35000, disagree: false });
	});

	it('is only ever lowered by a voltage at which it broke up', () => {
		expect(sparkCapacity(null, 40000)).toEqual(sparkCapacity(null, null));
		expect(sparkCapacity(null, 27000)).toEqual({ usual: 27000, low: 25600, high: 27000, disagree: false });
		expect(sparkCapacity(null, 20000)).toEqual({ usual: 20000, low: 20000, high: 20000, disagree: false });
	});

	it('is bracketed by both', () => {
		expect(sparkCapacity(24000, 28000)).toEqual({ usual: 27500, low: 24000, high: 28000, disagree: false });
		expect(sparkCapacity(31000, 33000)).toEqual({ usual: 31000, low: 31000, high: 33000, disagree: false });
		expect(sparkCapacity(20000, 22000)).toEqual({ usual: 22000, low: 20000, high: 22000, disagree: false });
	});

	it('says so when the coil fired where it should have broken up, and counts the lower', () => {
		expect(sparkCapacity(30000, 26000)).toEqual({ usual: 26000, low: 26000, high: 30000, disagree: true });
		expect(sparkCapacity(26000, 26000).disagree).toBe(false);
	});

	it('keeps its figure inside its band, whatever the coil has shown', () => {
		const maybe = fc.option(volts, { nil: null });
		fc.assert(
			fc.property(maybe, maybe, (proven, blown) => {
				const { usual, low, high } = sparkCapacity(proven, blown);
				expect(usual).toBeGreaterThanOrEqual(low);
				expect(usual).toBeLessThanOrEqual(high);
			}),
			seeded,
		);
	});

	it('refuses a voltage of nothing', () => {
		expect(() => sparkCapacity(0, null)).toThrow('proven voltage');
		expect(() => sparkCapacity(null, Number.NaN)).toThrow('blown voltage');
	});
});

describe('spark margin', () => {
	it('is nothing at the limit and under nothing past it', () => {
		expect(sparkMargin(27500, 27500)).toBe(0);
		expect(sparkMargin(27500, 25000)).toBeCloseTo(0.1, 12);
		expect(sparkMargin(27500, 30000)).toBeLessThan(0);
		expect(() => sparkMargin(27500, 0)).toThrow('required voltage');
		expect(() => sparkMargin(-1, 1)).toThrow('spark capacity');
	});
});
