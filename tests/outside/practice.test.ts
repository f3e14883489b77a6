import { describe, expect, it } from 'vitest';
import { burnOf, fullLoadCycle, trapped } from '../../src/physics/full-load.ts';
import type { FullLoad } from '../../src/physics/full-load-engine.ts';
import { knockBand, knockIntegral } from '../../src/physics/knock.ts';
import { sweptVolume } from '../../src/physics/slider-crank.ts';
import { gasDensityAtSpark, requiredVoltage, sparkCapacity } from '../../src/physics/spark.ts';
import { burntAt } from '../../src/physics/wiebe.ts';

/** Everything here is common practice: known among builders, without a source. No constant was chosen to meet it. */

const psi = 6894.757293168;
const seaLevel = 101325;

describe('three spark gaps that practice knows, at 9:1, intake closing 50 deg, spark 20 deg before top (common practice)', () => {
	const cylinder = { bore: 0.1016, stroke: 0.0762, rod: 0.0762 * 1.7, ratio: 9 };
	const gapAt = (inch: number, boost: number, kelvin: number) => {
		const density = gasDensityAtSpark(cylinder, { pressure: seaLevel + boost * psi, temperature: kelvin }, 50, 20);
		return { product: density * inch, volts: requiredVoltage(density, inch * 0.0254) };
	};
	const wideUnboosted = gapAt(0.054, 0, 310);
	const middleAtTen = gapAt(0.035, 10, 320);
	const middleAtFifteen = gapAt(0.035, 15, 325);
	const narrowAtTwenty = gapAt(0.02, 20, 330);

	it('orders them by density x gap with no constant at all: 0.020 at 20 psi, 0.054 unboosted, 0.035 at 10, 0.035 at 15', () => {
		const asked = [narrowAtTwenty, wideUnboosted, middleAtTen, middleAtFifteen].map(({ product }) => product);
		expect(asked).toEqual(asked.toSorted((a, b) => a - b));
	});

	const { usual, low, high } = sparkCapacity(null, null);

	it('fires 0.054 in unboosted, even on the weakest usual coil', () => {
		expect(wideUnboosted.volts).toBeLessThan(low);
	});

	it('blows 0.035 in out between 10 and 15 psi, on the weakest and on the strongest usual coil', () => {
		for (const volts of [low, usual, high]) {
			expect(middleAtTen.volts).toBeLessThan(volts);
			expect(middleAtFifteen.volts).toBeGreaterThan(volts);
		}
	});

	it('still fires 0.020 in at 20 psi and above, to 25 psi at least', () => {
		expect(narrowAtTwenty.volts).toBeLessThan(low);
		expect(gapAt(0.02, 25, 335).volts).toBeLessThan(low);
	});
});

/** A hot day of 95 degF at 500 ft, the usual compressor, 65 % of intercooling, the usual losses. */
const [ambient, hotDay] = [99500, 308.15];
const sizes: [string, number, number][] = [
	['4.9 litres', 0.1016, 0.0762],
	['5.0 litres, long stroke', 0.0933, 0.0914],
	['5.7 litres', 0.1016, 0.0884],
	['6.2 litres', 0.1032, 0.092],
];

function engine(bore: number, stroke: number, boost: number, effectiveness: number | null, advance: number): FullLoad {
	const lost = effectiveness === null ? 0 : 7000;
	const pressureRatio = (ambient + boost * psi + lost) / (ambient - 1000);
	const compressed = hotDay * (1 + (pressureRatio ** (0.4 / 1.4) - 1) / 0.7);
	const boosted = compressed - (effectiveness ?? 0) * (compressed - hotDay);
	return {
		cylinder: { bore, stroke, rod: 1.7 * stroke, ratio: 9 },
		speed: 5000,
		intakeCloses: 60,
		manifoldPressure: ambient + boost * psi,
		chargeTemperature: boost === 0 ? hotDay + 10 : boosted,
		volumetricEfficiency: 0.85,
		lambda: boost === 0 ? 0.87 : 0.8,
		fuel: { stoichiometricRatio: 14.7, heatingValue: 43.44e6, ethanol: 0 },
		advance,
	};
}

/** 87 by the pump index. */
const ron = 92;

describe.each(sizes)('the cylinder at 9:1 and 5000 rpm, %s (common practice)', (_, bore, stroke) => {
	it('peaks at 45 to 70 bar unboosted at 28 deg, some 5 to 20 deg after top', () => {
		const trace = fullLoadCycle(engine(bore, stroke, 0, null, 28));
		expect(trace.peakPressure).toBeGreaterThan(45e5);
		expect(trace.peakPressure).toBeLessThan(70e5);
		expect(trace.peakAngle).toBeGreaterThan(5);
		expect(trace.peakAngle).toBeLessThan(20);
	});

	it('peaks at 70 to 110 bar at 15 psi, intercooled, at 16 deg', () => {
		const { peakPressure } = fullLoadCycle(engine(bore, stroke, 15, 0.65, 16));
		expect(peakPressure).toBeGreaterThan(70e5);
		expect(peakPressure).toBeLessThan(110e5);
	});

	it('does not knock on 87 pump octane unboosted at 28 deg, by the middle of the band', () => {
		expect(knockIntegral(fullLoadCycle(engine(bore, stroke, 0, null, 28)), 5000, ron)).toBeLessThan(1);
	});

	it('knocks on 87 pump octane at 15 psi without an intercooler at 28 deg, at its worst speed, at the low end of the band too', () => {
		const hard = engine(bore, stroke, 15, null, 28);
		const worst = Math.max(
			...[5000, 3250, 3000].map(speed => knockIntegral(fullLoadCycle({ ...hard, speed }), speed, ron)),
		);
		expect(worst).toBeGreaterThan(1.5);
		expect(worst * knockBand.low).toBeGreaterThan(1);
	});

	it('has its best torque unboosted at a spark of 28 to 34 deg, the peak 12 to 17 deg after top, the curve flat about it', () => {
		const work = (advance: number) => fullLoadCycle(engine(bore, stroke, 0, null, advance)).work;
		const sparks = Array.from({ length: 41 }, (_, i) => 10 + i);
		const best = sparks.reduce((good, next) => (work(next) > work(good) ? next : good));
		expect(best).toBeGreaterThanOrEqual(28);
		expect(best).toBeLessThanOrEqual(34);
		const { peakAngle } = fullLoadCycle(engine(bore, stroke, 0, null, best));
		expect(peakAngle).toBeGreaterThan(12);
		expect(peakAngle).toBeLessThan(17);
		// Half burnt 8 deg after top, the published place, is some 3 deg of spark later: as good to 1 %.
		expect(work(best - 6) / work(best)).toBeGreaterThan(0.99);
	});

	const brakeBest = (speed: number) => {
		const at = (advance: number): FullLoad => ({ ...engine(bore, stroke, 0, null, advance), speed });
		// Friction rises by 0.005 of the peak pressure (Chen & Flynn, SAE 650733, from memory).
		const brake = (advance: number) => {
			const { work, peakPressure } = fullLoadCycle(at(advance));
			return work - 0.005 * peakPressure * sweptVolume(bore, stroke);
		};
		const sparks = Array.from({ length: 31 }, (_, i) => 5 + i);
		const best = sparks.reduce((good, next) => (brake(next) > brake(good) ? next : good));
		const { delay, duration, power } = burnOf(at(best), trapped(at(best)));
		return { best, half: delay + burntAt(0.5, power) * duration - best };
	};

	// Measured mostly at 1500 to 2500 rpm: 8 to 12 deg after top at best brake torque (common practice). The model is up to 1 deg
	// early: see `usualFlame`. The sparks are those of full-load tables of two-valve heads (common practice).
	it('has half of it burnt 7 to 12 deg after top at 2000 rpm, at the spark of best brake torque, 22 to 27 deg', () => {
		const { best, half } = brakeBest(2000);
		expect(half).toBeGreaterThan(7);
		expect(half).toBeLessThan(12);
		expect(best).toBeGreaterThanOrEqual(22);
		expect(best).toBeLessThanOrEqual(27);
	});

	it('has its best brake torque at 28 to 30 deg at 3500 rpm', () => {
		const { best } = brakeBest(3500);
		expect(best).toBeGreaterThanOrEqual(28);
		expect(best).toBeLessThanOrEqual(30);
	});
});
