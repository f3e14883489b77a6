import { expect, test } from 'vitest';
import { agreement } from '../../src/fit/agreement.ts';
import type { CarProblem } from '../../src/fit/car-problem.ts';
import { modeFrom, seenUnknowns, slopesAt } from '../../src/fit/mode.ts';
import { type Sensor, sensors } from '../../src/fit/terms.ts';
import { counts } from '../counts.ts';
import { drawnCar } from '../support/fitted-car.ts';

/** By how many of its own deviations a sensor is off that puts the mean of its channel five prior-predictive ones away. */
function fiveOff(problem: CarProblem, channel: Sensor): { readonly at: number; readonly size: number } | null {
	const rows = problem.compared.flatMap((one, row) => (one.channel === channel ? [row] : []));
	if (rows.length === 0) return null;
	const center = new Float64Array(problem.dimensions);
	const unknowns = seenUnknowns(problem, center);
	const found = slopesAt(problem, unknowns, center);
	const at = problem.car.sampler.dimensions + sensors.indexOf(channel);
	const own = found?.slopes[unknowns.indexOf(at)];
	if (!found || !own) return null;
	const mean = (values: Float64Array) => rows.reduce((sum, row) => sum + values[row]!, 0) / rows.length;
	const variance = found.slopes.reduce((sum, slope) => sum + mean(slope) ** 2, 1 / rows.length);
	return { at, size: (5 * Math.sqrt(variance)) / Math.abs(mean(own)) };
}

const channels = ['injector_pulse', 'meter_volts', 'fuel_pressure', 'pump_volts'] as const;

test(`a sensor that is off by five prior-predictive deviations is refused in 9 of 10, of ${counts.wrongSensors} cars each`, () => {
	let [all, refused] = [0, 0];
	for (const channel of channels) {
		let [own, tried] = [0, 0];
		for (let seed = 500; tried < counts.wrongSensors; seed++) {
			let off: ReturnType<typeof fiveOff> = null;
			const { problem } = drawnCar(seed, {
				facts: false,
				wrong: (made, truth) => {
					off = fiveOff(made, channel);
					if (off) truth[off.at]! += off.size;
				},
			});
			if (!off) continue;
			tried++;
			const center = new Float64Array(problem.dimensions);
			const unknowns = seenUnknowns(problem, center);
			const mode = modeFrom(problem, unknowns, center);
			const names = problem.compared.map(one => one.channel);
			const far =
				mode &&
				problem.terms.some(
					(term, at) => term.channel !== null && Math.abs(mode.point[problem.car.sampler.dimensions + at]!) > 2.5,
				);
			if (!mode || far || agreement(problem, unknowns, mode, names) < 0.01) own++;
		}
		console.info(`${channel}: ${own} of ${tried} refused`);
		all += tried;
		refused += own;
	}
	expect(refused / all).toBeGreaterThanOrEqual(0.9);
}, 3_600_000);
