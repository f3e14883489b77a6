import { expect, test } from 'vitest';
import { chargeOf } from '../../src/physics/charge.ts';
import { closedCycle } from '../../src/physics/cycle.ts';
import { knockIntegral } from '../../src/physics/knock.ts';
import { cylinderVolume } from '../../src/physics/slider-crank.ts';

// The engine that octane numbers are read from, by the research method, at standard knock: 3.25 x 4.5 in, 10 in rod, 600 rpm,
// spark 13 deg before top, intake closing 34 deg after bottom (ASTM D2699, dimensions from memory), compression as its guide table
// sets it for 98 and 100 octane (from memory, 7.5 and 7.9), gas at 384 K where the intake closes. Measured onset of knock:
// 12.0 to 12.4 deg after top (SAE 2018-01-0848 by way of a secondary source, not opened). No source
// was found for its burn from 10 to 90 %: the 20 to 21 deg are ours, chosen because with them the onset falls where it was measured.
// A degree more moves it by 1.2 deg, so what this holds is only that a fast burn, as knock brings, fits the measurement: weak evidence
// for the knock model. The stronger checks are the two-zone cycle and the facts of practice.
const cylinder = { bore: 0.08255, stroke: 0.1143, rod: 0.254 };

/** Deg after top where the integral reaches 1. */
function onset(ron: number, ratio: number, tenToNinety: number): number {
	const engine = { ...cylinder, ratio };
	const charge = chargeOf(0.95, 0, 0.06);
	const [pressure, temperature] = [1e5, 384];
	const mass = (pressure * cylinderVolume(engine, -146)) / (charge.unburnt.constant * temperature);
	const fuel = (0.94 * mass) / (1 + 14.7 * 0.95);
	const trace = closedCycle(
		{
			cylinder: engine,
			speed: 600,
			shut: -146,
			opens: 140,
			pressure,
			temperature,
			charge,
			burn: { start: -13, duration: tenToNinety / 0.496, heat: 0.97 * fuel * (43.44e6 - charge.kept) },
			walls: { temperature: 450, film: 'woschni' },
		},
		0.5,
	);
	const reached = trace.angle.findIndex((_, ninety) => knockIntegral({ ...trace, ninety }, 600, ron) >= 1);
	return trace.angle[reached]!;
}

test.each([
	[98, 7.5, 20],
	[98, 7.5, 21],
	[100, 7.9, 20],
	[100, 7.9, 21],
])(
	'octane %d at %d:1, burnt from 10 to 90 %% in %d deg: the integral reaches 1 at 12.2 deg, within 1.5',
	(ron, ratio, burn) => {
		expect(Math.abs(onset(ron, ratio, burn) - 12.2)).toBeLessThan(1.5);
	},
);
