import { describe, expect, test } from 'vitest';
import { chargeOf } from '../../src/physics/charge.ts';
import { closedCycle } from '../../src/physics/cycle.ts';
import { knockIntegral } from '../../src/physics/knock.ts';
import { cylinderVolume, sweptVolume } from '../../src/physics/slider-crank.ts';

// A second model, written apart in another language (two-zone.py beside this file): two zones, gasoline as isooctane and
// toluene 60:40 by mole, burnt gas of ten species in full chemical equilibrium, the core of the end gas by constant entropy,
// properties and equilibrium by Cantera 3.2.0 (nasa_gas.yaml). Same air, residual, spark, burn curve and wall law; 3 % of
// what would burn does not. Recorded with steps of 0.1 deg.
type Four = [number, number, number, number];
type Eight = [...Four, ...Four];

const states: [name: string, ...numbers: number[]][] = [
	['unboosted', 9, 5000, 0.87, 99.5e3, 318, -19, 54, 92, 45.29, 17.1, 834.9, 0.3084],
	['unboosted, slow', 9, 2500, 0.87, 99.5e3, 318, -21, 44, 92, 55.24, 11.5, 871.3, 0.6943],
	['unboosted, stoichiometric', 9.5, 5000, 1, 99.5e3, 318, -19, 54, 92, 46.48, 16.7, 849.9, 0.3593],
	['8 psi', 9, 5000, 0.8, 155e3, 325, -10, 46, 96, 63.16, 21.3, 822.1, 0.3992],
	['15 psi', 9, 5000, 0.8, 203e3, 330, -9, 42, 98, 85.91, 20.4, 838.9, 0.6072],
	['15 psi, slow', 9, 3000, 0.8, 203e3, 330, -7, 36, 98, 91.26, 19.2, 849.7, 0.9663],
	['15 psi, hot charge, early', 9, 5000, 0.8, 203e3, 400, -18, 42, 92, 90.87, 12.8, 988.3, 1.4532],
	['10 psi at 10.5:1', 10.5, 5500, 0.78, 168e3, 330, -8, 46, 98, 72.05, 22.1, 835.1, 0.5124],
	['20 psi at 8:1', 8, 5000, 0.8, 238e3, 340, -9, 42, 98, 88.7, 21.0, 839.5, 0.6183],
];

const cylinder = { bore: 0.1016, stroke: 0.0884, rod: 0.15 };

describe('the cylinder against two zones with equilibrium burnt gas (computed by Cantera 3.2.0)', () => {
	test.each(states)('%s', (_, ...numbers) => {
		const [ratio, speed, lambda, manifold, charged, start, duration, ron] = numbers as Eight;
		const [bar, deg, endGas, integral] = numbers.slice(8) as Four;
		const engine = { ...cylinder, ratio };
		const air = 0.85 * (manifold / (287.05 * charged)) * sweptVolume(engine.bore, engine.stroke);
		const mass = (air * (1 + 1 / (14.6 * lambda))) / 0.94;
		const temperature = charged + 25;
		const charge = chargeOf(lambda, 0, 0.06);
		const trace = closedCycle({
			cylinder: engine,
			speed,
			shut: -120,
			opens: 120,
			pressure: (mass * charge.unburnt.constant * temperature) / cylinderVolume(engine, -120),
			temperature,
			charge,
			burn: { start, duration, heat: (0.97 * air * (43.44e6 - charge.kept)) / (14.7 * lambda) },
			walls: { temperature: 450, film: 'woschni' },
		});
		const top = trace.pressure.indexOf(Math.max(...trace.pressure));
		expect(Math.abs(trace.peakPressure / 1e5 / bar - 1)).toBeLessThan(0.05);
		expect(Math.abs(trace.peakAngle - deg)).toBeLessThan(0.5);
		expect(Math.abs(trace.endGas[top]! - endGas)).toBeLessThan(10);
		expect(Math.abs(knockIntegral(trace, speed, ron) / integral - 1)).toBeLessThan(0.1);
	});
});
