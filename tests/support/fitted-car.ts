import { type CarProblem, carProblem } from '../../src/fit/car-problem.ts';
import type { Compared } from '../../src/fit/comparison.ts';
import type { FitLog, FitPoint } from '../../src/fit/fit-log.ts';
import { logLikelihood } from '../../src/fit/problem.ts';
import { type RandomSource, seededRandom } from '../../src/fit/random.ts';
import { type State, solve } from '../../src/graph/solve.ts';
import type { Uncertain } from '../../src/graph/uncertain.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import { uncertainSlots } from '../../src/quantities/uncertainty.ts';
import { answerTo, type Sheet } from '../../src/sheet/sheet.ts';
import { declared } from './declared.ts';
import { buildSheet, testModel } from './model.ts';

/** A car whose inputs and sensors are drawn from what its sheet says, and the log that they make. */
export interface DrawnCar {
	readonly sheet: Sheet;
	readonly state: State;
	readonly uncertain: readonly Uncertain[];
	readonly log: FitLog;
	readonly problem: CarProblem;
	/** By unknown, in standard deviations of the prior. */
	readonly truth: Float64Array;
}

const psi = 6894.757;
const spreadChannels = [
	'injector_pulse',
	'meter_volts',
	'fuel_pressure',
	'pump_volts',
	'charge_temp',
	'lambda_2',
] as const;

/** What differs from one sheet to the next: how answers are known, and which ones nobody gave. */
function someSheet({ uniform }: RandomSource): Sheet {
	const sheet = buildSheet('boosted');
	const dropped = ['engine.volumetric_efficiency', 'fuel.pump_voltage', 'boost.intercooler_effectiveness'];
	const ways = ['measured', 'paperwork', 'estimate'] as const;
	const answers = Object.fromEntries(
		Object.entries(sheet.answers).map(([section, inside]) => [
			section,
			Object.fromEntries(
				Object.entries(inside).flatMap(([name, answer]) => {
					if (dropped.includes(`${section}.${name}`) && uniform() < 0.5) return [];
					const known = ways[Math.floor(uniform() * 3)]!;
					return [[name, typeof answer.value === 'number' && answer.unit ? { ...answer, known } : answer]];
				}),
			),
		]),
	);
	return { ...sheet, answers };
}

/** A log of nothing yet: what was run at, with any figure for what the model is to say. */
function design({ uniform }: RandomSource, points: number, facts: boolean): FitLog {
	const has = new Set<string>(spreadChannels.filter(() => uniform() < 0.8));
	const peak = (4 + 5 * uniform()) * psi;
	const [from, to] = [2800 + 600 * uniform(), 4800 + 900 * uniform()];
	const ambient = 97_000 + 4000 * uniform();
	return {
		ambient,
		outside: uniform() < 0.7 ? 283 + 15 * uniform() : null,
		points: Array.from({ length: points }, (_, at): FitPoint => {
			const share = at / (points - 1);
			const read: FitPoint['read'] = {
				manifold_pressure: { value: ambient + peak * (0.8 + 0.2 * share), deviation: 100 },
				lambda_1: { value: 0.8, deviation: 0.002 },
				spark_advance: { value: 14, deviation: 0.1 },
				...Object.fromEntries(
					Object.entries({
						lambda_2: [0.8, 0.002],
						injector_pulse: [0.01, 0.00002],
						meter_volts: [2.5, 0.01],
						fuel_pressure: [50 * psi, 1000],
						pump_volts: [13.5, 0.02],
						charge_temp: [315, 0.3],
					})
						.filter(([id]) => has.has(id))
						.map(([id, [value, deviation]]) => [id, { value, deviation }]),
				),
			};
			return { pull: 1, speed: Math.round(from + share * (to - from)), read };
		}),
		idle: uniform() < 0.5 ? { rail: 35 * psi, manifold: 38_000 } : null,
		power: new Map(uniform() < 0.5 ? [[1, 250_000]] : []),
		held: { clutch: facts ? [1] : [], spark: facts ? [1] : [], knock: [] },
	};
}

/** Which figure of the log a comparison is made with. */
function changed(log: FitLog, { channel, speed, pull }: Compared, to: (now: number) => number): FitLog {
	if (channel === 'idle_rail') return { ...log, idle: { ...log.idle!, rail: to(log.idle!.rail) } };
	if (channel === 'road_load') return { ...log, power: new Map([[pull!, to(log.power.get(pull!)!)]]) };
	return {
		...log,
		points: log.points.map(point =>
			point.speed === speed
				? {
						...point,
						read: { ...point.read, [channel]: { ...point.read[channel]!, value: to(point.read[channel]!.value) } },
					}
				: point,
		),
	};
}

/** Draws a car and makes the log that it would write: each reading such that its residual is the noise drawn for it. */
export function drawnCar(
	seed: number,
	options: {
		points?: number;
		facts?: boolean;
		sheet?: Sheet;
		wrong?: (problem: CarProblem, truth: Float64Array) => void;
	} = {},
): DrawnCar {
	const { points = 6, facts = true } = options;
	const chance = seededRandom(seed);
	const { rulebook, graph, quantities } = testModel();
	const sheet = options.sheet ?? someSheet(chance);
	const state = solve(graph, givenAnswers(sheet, rulebook.questions));
	const uncertain = uncertainSlots(rulebook.questions, quantities, state, id => answerTo(sheet, id));
	for (;;) {
		let log = design(chance, points, facts);
		let problem = carProblem(state, uncertain, [log], declared());
		const truth = Float64Array.from({ length: problem.dimensions }, () => chance.normal());
		options.wrong?.(problem, truth);
		const noise = problem.compared.map(() => chance.normal());
		let off = Number.POSITIVE_INFINITY;
		// Newton's steps, reading by reading: each residual moves with its own figure of the log alone.
		for (let round = 0; round < 10 && off > 1e-3; round++) {
			const aside = problem.compared.reduce((made, one) => changed(made, one, now => now * 1.001), log);
			const here = problem.at(truth)?.residuals.slice();
			const there = carProblem(state, uncertain, [aside], declared()).at(truth)?.residuals.slice();
			if (!here || !there || here.length !== there.length) break;
			off = Math.max(...here.map((one, at) => Math.abs(one - noise[at]!)));
			log = problem.compared.reduce(
				(made, one, at) =>
					changed(made, one, now => now * (1 + (0.001 * (noise[at]! - here[at]!)) / (there[at]! - here[at]!))),
				log,
			);
			problem = carProblem(state, uncertain, [log], declared());
		}
		const seen = off < 1e-3 ? problem.at(truth) : null;
		if (!seen) continue;
		// The facts are part of the log: a car that would not have shown them has another one.
		const likelihood = Math.exp(logLikelihood(problem, { residuals: new Float64Array(0), margins: seen.margins }));
		if (chance.uniform() < likelihood) return { sheet, state, uncertain, log, problem, truth };
	}
}
