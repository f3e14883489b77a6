import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chargeOf } from '../../src/physics/charge.ts';
import type { ClosedCycle } from '../../src/physics/closed-cycle.ts';
import { closedCycle, usualStep } from '../../src/physics/cycle.ts';
import { enthalpyAt, type Gas } from '../../src/physics/gas.ts';
import { knockIntegral } from '../../src/physics/knock.ts';
import { cylinderVolume } from '../../src/physics/slider-crank.ts';
import { constantGas } from '../support/constant-gas.ts';
import { plainCycle } from './plain-cycle.ts';

const cylinder = { bore: 0.1016, stroke: 0.0884, rod: 0.15, ratio: 9 };
const constant = (gamma: number) => {
	const gas = constantGas(gamma, 287.05);
	return { unburnt: gas, burnt: gas, kept: 0 };
};
const charge = chargeOf(0.87, 0, 0.06);

/** A full-load cycle of a 5.7 litre V8. */
const real: ClosedCycle = {
	cylinder,
	speed: 5000,
	shut: -120,
	opens: 120,
	pressure: 1.12e5,
	temperature: 343,
	charge,
	burn: { start: -28, duration: 54.4, heat: 1900 },
	walls: { temperature: 450, film: 'woschni' },
};
const boosted: ClosedCycle = {
	...real,
	pressure: 2.2e5,
	temperature: 370,
	burn: { start: -16, duration: 54.4, heat: 3500 },
};
const lossless: ClosedCycle = { ...real, walls: { temperature: 450, film: 0 } };
const burntShare = (y: number) => 1 - Math.exp(-5 * y ** 3);
const relative = (found: number, expected: number) => Math.abs(found / expected - 1);

describe('the cycle in its limits', () => {
	it.each([1.25, 1.33, 1.4])('compresses along p V^gamma when nothing burns and nothing is lost: gamma %s', gamma => {
		const trace = closedCycle({ ...lossless, charge: constant(gamma), burn: { ...real.burn, heat: 0 } });
		const v1 = cylinderVolume(cylinder, -120);
		trace.angle.forEach((angle, i) => {
			const expected = real.pressure * (v1 / cylinderVolume(cylinder, angle)) ** gamma;
			expect(relative(trace.pressure[i]!, expected)).toBeLessThan(1e-5);
			const endGas = real.temperature * (v1 / cylinderVolume(cylinder, angle)) ** (gamma - 1);
			expect(relative(trace.endGas[i]!, endGas)).toBeLessThan(1e-5);
		});
		expect(relative(trace.peakPressure, real.pressure * (v1 / cylinderVolume(cylinder, 0)) ** gamma)).toBeLessThan(
			1e-5,
		);
		expect(Math.abs(trace.peakAngle)).toBeLessThan(0.01);
		expect(Math.abs(trace.work)).toBeLessThan(0.01);
	});

	it('is the Otto cycle when all burns at once at the top and nothing is lost', () => {
		const heat = 1500;
		const trace = closedCycle({
			...lossless,
			shut: -180,
			opens: 180,
			charge: constant(1.4),
			burn: { start: 0, duration: 1e-6, heat },
		});
		const clearance = cylinderVolume(cylinder, 0);
		const compressed = real.pressure * 9 ** 1.4;
		const fired = compressed + (0.4 * heat) / clearance;
		expect(relative(trace.peakPressure, fired)).toBeLessThan(1e-4);
		expect(relative(trace.work / heat, 1 - 9 ** -0.4)).toBeLessThan(1e-4);
		expect(relative(trace.pressure.at(-1)!, (fired / compressed) * real.pressure)).toBeLessThan(1e-4);
	});

	it('heats at constant volume as the gas law says when the heat moves with temperature, all burnt at once', () => {
		const trace = closedCycle({ ...lossless, burn: { start: 0, duration: 1e-6, heat: 1500 } });
		const at = trace.angle.findIndex(angle => angle >= 0);
		const clearance = cylinderVolume(cylinder, 0);
		const hot = (trace.peakPressure * clearance) / (massOf(real) * charge.burnt.constant);
		const cool = (trace.pressure[at]! * clearance) / (massOf(real) * charge.unburnt.constant);
		const gained = energyOf(charge.burnt, hot) - energyOf(charge.unburnt, cool);
		expect(relative(massOf(real) * gained, 1500)).toBeLessThan(1e-4);
	});
});

const massOf = (cycle: ClosedCycle) =>
	(cycle.pressure * cylinderVolume(cylinder, cycle.shut)) / (cycle.charge.unburnt.constant * cycle.temperature);
/** Internal energy, J/kg. */
const energyOf = (gas: Gas, kelvin: number) => enthalpyAt(gas, kelvin) - gas.constant * kelvin;

describe('energy', () => {
	it.each([
		['unboosted', real],
		['boosted', boosted],
		['a late spark whose burn outlasts the stroke', { ...real, burn: { ...real.burn, start: 60 } }],
	] as const)('is neither made nor lost: %s', (_, cycle) => {
		const trace = closedCycle(cycle);
		const burnt = burntShare((cycle.opens - cycle.burn.start) / cycle.burn.duration);
		const mass = massOf(cycle);
		const work = trace.work + trace.wallHeat;
		const { from, to } = zonesAtEnd(cycle, trace.pressure.at(-1)!, burnt, trace.unburntEnd);
		const kept = mass * (burnt * to + (1 - burnt) * from - energyOf(cycle.charge.unburnt, cycle.temperature));
		expect(Math.abs(burnt * cycle.burn.heat - work - kept) / cycle.burn.heat).toBeLessThan(1e-4);
	});
});

/** Internal energy a kg of what is unburnt and of what is burnt at the end, by what fills the cylinder. */
function zonesAtEnd(cycle: ClosedCycle, pressure: number, burnt: number, unburnt: number) {
	const gas = cycle.charge;
	const own = (massOf(cycle) * (1 - burnt) * gas.unburnt.constant * unburnt) / pressure;
	const other = cylinderVolume(cylinder, cycle.opens) - own;
	const hot = (pressure * other) / (massOf(cycle) * burnt * gas.burnt.constant);
	return { from: energyOf(gas.unburnt, unburnt), to: energyOf(gas.burnt, hot) };
}

describe('the step', () => {
	it.each([
		['unboosted', real],
		['boosted', boosted],
		['a fast burn', { ...real, burn: { ...real.burn, duration: 20 } }],
		['very early', { ...real, burn: { ...real.burn, start: -60 } }],
	] as const)(
		'is small enough: a tenth of it moves peak pressure under 0.01 % and the knock integral under 0.5 %, %s',
		(_, cycle) => {
			const usual = closedCycle(cycle);
			const fine = closedCycle(cycle, usualStep / 10);
			expect(relative(usual.peakPressure, fine.peakPressure)).toBeLessThan(1e-4);
			expect(Math.abs(usual.peakAngle - fine.peakAngle)).toBeLessThan(0.05);
			expect(relative(usual.work, fine.work)).toBeLessThan(1e-4);
			expect(relative(knockIntegral(usual, 5000, 92), knockIntegral(fine, 5000, 92))).toBeLessThan(5e-3);
		},
	);

	it('converges with the fourth power of its length, on a smooth burn', () => {
		const smooth = { ...lossless, charge: constant(1.35), burn: { start: -120, duration: 150, heat: 1500 } };
		const exact = closedCycle(smooth, 0.25).pressure.at(-1)!;
		const [coarse, halved] = [4, 2].map(step => Math.abs(closedCycle(smooth, step).pressure.at(-1)! - exact));
		expect(coarse! / halved!).toBeGreaterThan(10);
	});
});

describe('the cycle against a second one, written apart', () => {
	it.each([
		['unboosted', real],
		['boosted', boosted],
		['another fuel and mixture', { ...real, charge: chargeOf(1.1, 0.85, 0.1) }],
		['constant film and gamma', { ...real, charge: constant(1.3), walls: { temperature: 450, film: 800 } }],
	] as const)('comes to the same peak, work, wall heat and knock: %s', (_, cycle) => {
		const trace = closedCycle(cycle);
		const plain = plainCycle(cycle, 0.1, 92);
		expect(relative(trace.peakPressure, plain.peakPressure)).toBeLessThan(1e-4);
		expect(Math.abs(trace.peakAngle - plain.peakAngle)).toBeLessThan(0.05);
		expect(relative(trace.work, plain.work)).toBeLessThan(1e-4);
		expect(relative(trace.wallHeat, plain.wallHeat)).toBeLessThan(1e-4);
		expect(relative(knockIntegral(trace, cycle.speed, 92), plain.knock)).toBeLessThan(2e-3);
	});
});

describe('the trace', () => {
	it('marks where 90 % is burnt, and the last place when the valve opens first', () => {
		const trace = closedCycle(real);
		expect(burntShare((trace.angle[trace.ninety]! + 28) / 54.4)).toBeCloseTo(0.9, 9);
		const late = closedCycle({ ...real, burn: { ...real.burn, start: 100 } });
		expect(late.ninety).toBe(late.angle.length - 1);
		expect(late.angle.at(-1)).toBeCloseTo(120, 9);
	});

	it('has its peak at an end where it rises until the valve opens, or falls from the start', () => {
		const rising = closedCycle({ ...real, opens: 5 });
		expect(rising).toMatchObject({ peakPressure: rising.pressure.at(-1)!, peakAngle: 5 });
		const cold = { ...real, shut: -2, speed: 100, burn: { ...real.burn, start: 40, heat: 0 } };
		const falling = closedCycle({
			...cold,
			pressure: 20e5,
			temperature: 900,
			walls: { temperature: 300, film: 10000 },
		});
		expect(falling).toMatchObject({ peakPressure: 20e5, peakAngle: -2 });
	});

	it('has its peak at or above every place, and the same one where it ends past it, whatever the engine', () => {
		const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
		fc.assert(
			fc.property(
				number(5, 16),
				number(600, 9000),
				number(0.3e5, 4e5),
				number(-60, 40),
				number(20, 120),
				number(0, 6000),
				(ratio, speed, pressure, start, duration, heat) => {
					const any = { ...real, cylinder: { ...cylinder, ratio }, speed, pressure, burn: { start, duration, heat } };
					const { peakPressure, peakAngle, work, wallHeat, pressure: all } = closedCycle(any);
					expect(closedCycle({ ...any, toPeak: true })).toMatchObject({ peakPressure, peakAngle });
					expect(all.every(p => p > 0 && p <= peakPressure)).toBe(true);
					expect([peakAngle, work, wallHeat].every(Number.isFinite)).toBe(true);
				},
			),
			{ seed: 17, numRuns: 150 },
		);
	});
});

describe('what the cycle refuses', () => {
	it.each([
		['pressure', { pressure: 0 }],
		['temperature', { temperature: Number.NaN }],
		['speed is 50; accepted: 100 to 20000', { speed: 50 }],
		['angle where the valves are shut', { shut: 5 }],
		['angle where a valve opens', { opens: 200 }],
		['angle of the spark', { burn: { ...real.burn, start: -130 } }],
		['burn duration', { burn: { ...real.burn, duration: 0 } }],
		['heat', { burn: { ...real.burn, heat: -1 } }],
		['wall temperature', { walls: { temperature: 0, film: 0 } }],
		['film coefficient', { walls: { temperature: 450, film: -1 } }],
		['compression ratio', { cylinder: { ...cylinder, ratio: 1 } }],
	] as const)('%s', (message, change) => {
		expect(() => closedCycle({ ...real, ...change })).toThrow(message);
	});

	it('a step of nothing', () => {
		expect(() => closedCycle(real, 0)).toThrow('step');
	});
});
