import type { Strays } from '../graph/graph.ts';
import type { Points } from '../graph/latin-hypercube.ts';
import type { Sampler } from '../graph/sampling.ts';
import type { State } from '../graph/solve.ts';
import type { Uncertain } from '../graph/uncertain.ts';
import type { Declared } from '../log/declared.ts';
import { agreement, leastShown } from './agreement.ts';
import { type CarProblem, carProblem } from './car-problem.ts';
import type { FitLog } from './fit-log.ts';
import { meanPoint } from './mean-point.ts';
import { type Moved, movedBy } from './moved-inputs.ts';
import { drawFrom, type Posterior, startOf } from './posterior.ts';
import type { Steps } from './steps.ts';
import { sensorErrors } from './terms.ts';
import { type Unsettled, unsettledIn } from './unsettled.ts';

/** The model fitted to logs of this car. */
export interface Fit {
	/** False: the log fits no car of these answers, or what is left could not be drawn. Then nothing rests on it. */
	readonly applied: boolean;
	readonly effective: number;
	readonly moved: readonly Moved[];
	readonly unsettled: readonly Unsettled[];
	/** The chance that a right log lies so far out, and what lies farthest. Null where it fits, or what is left could not be drawn. */
	readonly misfit: { readonly p: number; readonly look_at: readonly string[] } | null;
	/** By sensor the least error (a share, or in its unit) that would not pass for a difference of the car. */
	readonly detects: readonly { readonly id: string; readonly least: number }[];
	/** Where the inputs are by now, the mean of the draws: the whole graph is solved there. Empty unless applied. */
	readonly strays: Strays;
	/** What is left of the uncertain inputs, as points of a sampler of the same car. */
	points(sampler: Sampler): Points;
}

export interface FitOptions {
	readonly declared: Declared;
	/** Limits whose remaining variance is traced to inputs. */
	readonly limits: readonly string[];
	/** Whether an input is one that a person can find out. */
	readonly canMeasure: (id: string) => boolean;
	readonly seed: number;
}

/** A chance under this, or a sensor term farther out than that many standard deviations, fits no car of these answers. */
const [leastChance, farthestSensor] = [0.01, 2.5] as const;
/** Draws, and how many independent ones they are to be worth: for the figure of which they say least; most are worth twice that. */
const [draws, worth] = [2000, 400] as const;

/**
 * Fits the uncertain inputs of a solved sheet to logs, together with what the sensors are off. Null: nothing to compare with.
 * Yields the share that is done.
 */
export function* fitCar(
	state: State,
	uncertain: readonly Uncertain[],
	logs: readonly FitLog[],
	{ declared, limits, canMeasure, seed }: FitOptions,
): Steps<Fit | null> {
	const problem = carProblem(state, uncertain, logs, declared);
	if (problem.compared.length === 0) return null;
	yield 0;
	const start = startOf(problem, seed);
	if (!start) return refusal({ p: 0, look_at: [] });
	const named = namesOf(problem, state, uncertain);
	const channels = problem.compared.map(({ channel }) => channel);
	const p = agreement(problem, start.seen, start.mode, channels);
	const refusedAt = (point: Float64Array): Fit => {
		const out = [...start.seen].sort((a, b) => Math.abs(point[b]!) - Math.abs(point[a]!));
		return refusal({ p, look_at: [...new Set(out.map(unknown => named[unknown]!))].slice(0, 3) });
	};
	if (p < leastChance) return refusedAt(start.mode.point);
	const found = yield* drawFrom(problem, start, draws, worth);
	if (!found) return refusal(null);
	const mean = meanPoint(found.draws, found.seen, new Float64Array(problem.dimensions));
	const far = problem.terms.some(
		({ channel }, at) => channel !== null && Math.abs(mean[problem.car.sampler.dimensions + at]!) > farthestSensor,
	);
	if (far) return refusedAt(mean);
	const { first } = problem.car.sampler;
	const seen = new Set(found.seen);
	const strays = new Map(
		uncertain
			.filter(({ slot, dimensions }) => span(first.get(slot)!, dimensions).some(unknown => seen.has(unknown)))
			.map(({ slot, apply }) => [slot, (value: Parameters<typeof apply>[0]) => apply(value, mean, first.get(slot)!)]),
	);
	return {
		applied: true,
		effective: Math.round(found.effective),
		moved: movedBy(problem, found, mean, state, uncertain, declared),
		unsettled: unsettledIn(state, uncertain, found, named, limits, canMeasure),
		misfit: null,
		detects: detectedBy(problem, found, channels, declared),
		strays,
		points: sampler => pointsOf(found, first, sampler),
	};
}

function refusal(misfit: Fit['misfit']): Fit {
	return {
		applied: false,
		effective: 0,
		moved: [],
		unsettled: [],
		misfit,
		detects: [],
		strays: new Map(),
		points: () => {
			throw new TypeError('a fit that is refused has no draws');
		},
	};
}

const span = (from: number, count: number): number[] => Array.from({ length: count }, (_, at) => from + at);

/** By unknown: the id of the input or term that it belongs to. */
function namesOf({ car, terms, dimensions }: CarProblem, { graph }: State, uncertain: readonly Uncertain[]): string[] {
	const names = new Array<string>(dimensions).fill('');
	for (const { slot, dimensions: own } of uncertain)
		for (const unknown of span(car.sampler.first.get(slot)!, own)) names[unknown] = graph.nodes[slot]!.id;
	for (const [at, { id }] of terms.entries()) names[car.sampler.dimensions + at] = id;
	return names;
}

function detectedBy(
	{ terms, car, ...problem }: CarProblem,
	{ seen }: Posterior,
	channels: readonly string[],
	declared: Declared,
): Fit['detects'] {
	const errors = sensorErrors(declared);
	const unknownOf = (channel: string) => {
		const at = terms.findIndex(term => term.channel === channel);
		return at < 0 ? undefined : car.sampler.dimensions + at;
	};
	return [...leastShown(problem, seen, channels, unknownOf)].map(([channel, least]) => ({
		id: `sensor: ${channel}`,
		least: least * errors[channel as keyof typeof errors],
	}));
}

/** The draws as points of another sampler of the same car: each slot keeps its own coordinates. */
function pointsOf({ draws: all }: Posterior, first: ReadonlyMap<number, number>, sampler: Sampler): Points {
	const from = new Int32Array(sampler.dimensions);
	for (const { slot, dimensions } of sampler.uncertain)
		for (let at = 0; at < dimensions; at++) from[sampler.first.get(slot)! + at] = first.get(slot)! + at;
	return {
		point(index, into) {
			const draw = all[index % all.length]!;
			for (let at = 0; at < from.length; at++) into[at] = draw[from[at]!]!;
		},
	};
}
