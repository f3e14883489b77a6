import { describe, expect, it } from 'vitest';
import { chargeOf } from '../../src/physics/charge.ts';
import { closedCycle } from '../../src/physics/cycle.ts';
import { inductionTime, knockBand, knockIntegral } from '../../src/physics/knock.ts';

describe('induction time', () => {
	it('is shorter hotter, denser, and with less octane', () => {
		const usual = inductionTime(92, 40e5, 800);
		expect(inductionTime(92, 40e5, 850)).toBeLessThan(usual);
		expect(inductionTime(92, 50e5, 800)).toBeLessThan(usual);
		expect(inductionTime(87, 40e5, 800)).toBeLessThan(usual);
	});

	it('refuses an octane that no pump sells', () => {
		expect(() => inductionTime(130, 40e5, 800)).toThrow('octane number is 130; accepted: 60 to 120');
		expect(() => inductionTime(92, 0, 800)).toThrow('pressure');
		expect(() => inductionTime(92, 40e5, 0)).toThrow('temperature');
	});
});

describe('knock integral', () => {
	/** Gas that stands still at one pressure and temperature for 60 deg. */
	const still = (pressure: number, temperature: number) => ({
		...closedCycle({
			cylinder: { bore: 0.1, stroke: 0.09, rod: 0.15, ratio: 9 },
			speed: 3000,
			shut: -120,
			opens: 120,
			pressure: 1e5,
			temperature: 340,
			charge: chargeOf(1, 0, 0.06),
			burn: { start: -20, duration: 50, heat: 0 },
			walls: { temperature: 450, film: 0 },
		}),
		angle: Float64Array.of(-20, 0, 40),
		pressure: new Float64Array(3).fill(pressure),
		endGas: new Float64Array(3).fill(temperature),
		ninety: 2,
	});

	it('is the time that passes over the induction time, when nothing changes', () => {
		const tau = inductionTime(92, 40e5, 800);
		expect(knockIntegral(still(40e5, 800), 3000, 92)).toBeCloseTo(60 / (6 * 3000) / tau, 12);
	});

	it('halves at twice the speed, and stops where 90 % is burnt', () => {
		const trace = still(40e5, 800);
		expect(knockIntegral(trace, 6000, 92)).toBeCloseTo(knockIntegral(trace, 3000, 92) / 2, 12);
		expect(knockIntegral({ ...trace, ninety: 1 }, 3000, 92)).toBeCloseTo(knockIntegral(trace, 3000, 92) / 3, 12);
	});

	it('scales with octane as the induction time does', () => {
		const [low, high] = [87, 98].map(ron => knockIntegral(still(40e5, 800), 3000, ron));
		expect(low! / high!).toBeCloseTo((98 / 87) ** 3.402, 9);
	});

	it('refuses what the induction time refuses', () => {
		expect(() => knockIntegral(still(40e5, 800), 3000, 50)).toThrow('octane number');
		expect(() => knockIntegral(still(40e5, 800), 0, 92)).toThrow('speed');
	});

	it('has a band that holds the figure', () => {
		expect(knockBand).toEqual({ low: 0.6, high: 1.6 });
	});
});
