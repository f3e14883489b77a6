import { drawAcross, type Frame, frameOf, put, type Ridge, ridgeOf } from './frame.ts';
import { dot } from './matrix.ts';
import { type Mode, modeFrom, seenUnknowns } from './mode.ts';
import { logLikelihood, type Problem } from './problem.ts';
import { type Cloud, cloudOver } from './proposal.ts';
import { type Chance, chanceFrom } from './random.ts';
import { tempered } from './tempered.ts';
import { effectiveDraws, normalized, paretoShape, resampled } from './weights.ts';

/** What is left of the prior after what was seen: equally likely draws of all unknowns. */
export interface Posterior {
	readonly mode: Mode;
	/** Unknowns that anything seen moves with. */
	readonly seen: readonly number[];
	/** How many independent draws they are worth. */
	readonly effective: number;
	readonly draws: readonly Float64Array[];
	readonly by: 'weights' | 'tempering';
}

/** Rounds at most; the heaviest tail of weights that is believed. */
const [mostRounds, heaviest] = [8, 0.7] as const;
/** Particles that are tempered, by how many draws are enough. */
const particlesPer = 2.5;
/** Starts besides the center; a mode this far under the highest, as a logarithm, does not count. */
const [drawnStarts, lowest] = [4, 10] as const;

/**
 * `count` draws from what is left of the prior. The most likely point is looked for from the center and from drawn starts;
 * along the few directions in which anything seen shows more than the prior, draws come from a cloud about the ridge of likely
 * points, refitted each round; across them from the prior. All rounds are weighted as one mixture (Owen & Zhou 2000). Where
 * that is not worth `enough` draws they are tempered. Null: no mode, or that fails as well.
 */
export function drawPosterior(problem: Problem, seed: number, count: number, enough = 400): Posterior | null {
	const chance = chanceFrom(seed);
	const unknowns = seenUnknowns(problem, new Float64Array(problem.dimensions));
	const modes = modesOf(problem, unknowns, chance);
	if (modes.length === 0) return null;
	const [mode] = modes as [Mode];
	const frame = frameOf(unknowns, [mode]);
	const ridge = ridgeOf(problem, frame, mode);
	const set = new Mixture(problem, frame, ridge);
	set.draw(ridge.cloud, enough, chance);
	let weights = set.weights();
	for (let round = 1; round < mostRounds && !isWorth(weights, enough); round++) {
		const fitted = effectiveDraws(weights) > 5 * frame.basis.length ? cloudOver(set.aside, weights) : null;
		set.draw(fitted ?? ridge.cloud, enough, chance);
		weights = set.weights();
	}
	if (isWorth(weights, enough)) {
		const places = resampled(weights, count, chance.uniform());
		const draws = shuffle([...places], chance).map(place => complete(set.points[place]!, frame, chance));
		return { mode, seen: unknowns, effective: effectiveDraws(weights), draws, by: 'weights' };
	}
	const moved = tempered(problem, frame, ridge, set.last, chance, particlesPer * enough);
	if (!moved) return null;
	const draws = Array.from({ length: count }, (_, at) =>
		complete(moved.points[at % moved.points.length]!, frame, chance),
	);
	return { mode, seen: unknowns, effective: moved.effective, draws, by: 'tempering' };
}

const isWorth = (weights: Float64Array, enough: number): boolean =>
	effectiveDraws(weights) >= enough && paretoShape(weights) < heaviest;

/** The modes found from the center and from drawn starts, the highest first, each once. */
function modesOf(problem: Problem, unknowns: readonly number[], chance: Chance): Mode[] {
	const found = new Set<Mode>();
	for (let start = 0; start <= drawnStarts; start++) {
		const from = new Float64Array(problem.dimensions);
		if (start > 0) for (const unknown of unknowns) from[unknown] = chance.normal();
		const mode = modeFrom(problem, unknowns, from, found.values().next().value ?? null);
		if (mode) found.add(mode);
	}
	const sorted = [...found].sort((one, other) => other.height - one.height);
	return sorted.filter(({ height }) => height > sorted[0]!.height - lowest);
}

/** Draws of several clouds about a ridge, weighted as if each came from all of them. */
class Mixture {
	readonly points: Float64Array[] = [];
	/** How far each lies from the ridge, in the frame. */
	readonly aside: Float64Array[] = [];
	private readonly targets: number[] = [];
	private readonly clouds: { readonly cloud: Cloud; readonly count: number }[] = [];
	private readonly problem: Problem;
	private readonly frame: Frame;
	private readonly ridge: Ridge;

	constructor(problem: Problem, frame: Frame, ridge: Ridge) {
		this.problem = problem;
		this.frame = frame;
		this.ridge = ridge;
	}

	draw(cloud: Cloud, count: number, chance: Chance): void {
		this.clouds.push({ cloud, count });
		for (let index = 0; index < count; index++) {
			const across = drawAcross(this.frame, chance, this.problem.dimensions);
			const center = this.ridge.centerAt(across);
			const aside = new Float64Array(center.length);
			cloud.draw(chance, aside);
			const coordinates = center.map((one, at) => one + aside[at]!);
			const point = put(this.frame, coordinates, across);
			this.points.push(point);
			this.aside.push(aside);
			this.targets.push(logLikelihood(this.problem, this.problem.at(point)) - dot(coordinates, coordinates) / 2);
		}
	}

	weights(): Float64Array {
		const all = this.points.length;
		return normalized(
			Float64Array.from(this.targets, (target, index) => {
				let density = 0;
				for (const { cloud, count } of this.clouds)
					density += (count / all) * Math.exp(cloud.logDensity(this.aside[index]!));
				return target - Math.log(density);
			}),
		);
	}

	get last(): Cloud {
		return this.clouds.at(-1)!.cloud;
	}
}

/** The point with prior draws of all that nothing seen moves with. */
function complete(point: Float64Array, { unknowns }: Frame, chance: Chance): Float64Array {
	const made = point.map(() => chance.normal());
	for (const unknown of unknowns) made[unknown] = point[unknown]!;
	return made;
}

/** In an order by chance: Fisher and Yates. */
function shuffle(places: number[], chance: Chance): number[] {
	for (let at = places.length - 1; at > 0; at--) {
		const other = Math.floor(chance.uniform() * (at + 1));
		[places[at], places[other]] = [places[other]!, places[at]!];
	}
	return places;
}
