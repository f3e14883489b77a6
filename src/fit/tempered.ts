import { drawAcross, type Frame, put, type Ridge } from './frame.ts';
import { dot } from './matrix.ts';
import { logLikelihood, type Problem } from './problem.ts';
import { type Cloud, cloudOver } from './proposal.ts';
import type { Chance } from './random.ts';
import { effectiveDraws, normalized, resampled } from './weights.ts';

/** Moves of each particle at each temperature, and temperatures after which it is given up. */
const [moves, most] = [4, 20] as const;

interface Particle {
	readonly point: Float64Array;
	/** How far from the ridge, and where, in the frame. */
	readonly aside: Float64Array;
	readonly inFrame: Float64Array;
	readonly likelihood: number;
	/** The first draw that it goes back to. */
	readonly root: number;
}

/** Equally likely points, and how many independent ones they are worth at least. */
export interface Tempered {
	readonly points: readonly Float64Array[];
	readonly effective: number;
}

/**
 * From the cloud to what is left of the prior by degrees, half of the draws being worth something at each (Del Moral et al.
 * 2006): resampled, then moved by Metropolis steps along the frame and by steps that keep the prior across it (Cotter et al.
 * 2013). Null where it does not arrive, or nothing moves any more.
 */
export function tempered(
	problem: Problem,
	frame: Frame,
	ridge: Ridge,
	cloud: Cloud,
	chance: Chance,
	particles: number,
): Tempered | null {
	const make = (aside: Float64Array, across: Float64Array, root: number): Particle => {
		const inFrame = ridge.centerAt(across).map((one, at) => one + aside[at]!);
		const point = put(frame, inFrame, across);
		return { point, aside, inFrame, likelihood: logLikelihood(problem, problem.at(point)), root };
	};
	/** What the target has over the cloud, as a logarithm. */
	const over = ({ aside, inFrame, likelihood }: Particle) =>
		likelihood - dot(inFrame, inFrame) / 2 - cloud.logDensity(aside);
	let all = Array.from({ length: particles }, (_, root) => {
		const aside = new Float64Array(frame.basis.length);
		cloud.draw(chance, aside);
		return make(aside, drawAcross(frame, chance, problem.dimensions), root);
	});
	let heat = 0;
	for (let round = 0; round < most && heat < 1; round++) {
		const gains = Float64Array.from(all, over);
		const next = nextHeat(gains, heat, particles);
		const weights = normalized(gains.map(gain => (next - heat) * gain));
		heat = next;
		all = [...resampled(weights, particles, chance.uniform())].map(place => all[place]!);
		const walk = cloudOver(
			all.map(({ aside }) => aside),
			new Float64Array(particles).fill(1 / particles),
		);
		if (!walk) return null;
		let accepted = 0;
		const center = walk.mean;
		const scale = 1.7 / Math.sqrt(frame.basis.length);
		const step = new Float64Array(frame.basis.length);
		for (let move = 0; move < moves; move++) {
			all = all.map(one => {
				walk.draw(chance, step);
				const aside = one.aside.map((here, at) => here + scale * (step[at]! - center[at]!));
				const fresh = drawAcross(frame, chance, problem.dimensions);
				const across = one.point.map((here, at) => 0.9 * here + Math.sqrt(1 - 0.81) * fresh[at]!);
				const tried = make(aside, across, one.root);
				const gain =
					cloud.logDensity(tried.aside) + heat * over(tried) - cloud.logDensity(one.aside) - heat * over(one);
				if (!(Math.log(chance.uniform()) < gain)) return one;
				accepted++;
				return tried;
			});
		}
		if (accepted < 0.02 * moves * particles) return null;
	}
	return heat < 1 ? null : { points: all.map(({ point }) => point), effective: effectiveOf(all) };
}

/** Particles of one first draw count as one: moves part them, but not wholly. */
function effectiveOf(all: readonly Particle[]): number {
	const counts = new Map<number, number>();
	for (const { root } of all) counts.set(root, (counts.get(root) ?? 0) + 1);
	return all.length ** 2 / [...counts.values()].reduce((sum, count) => sum + count * count, 0);
}

/** The next temperature: at which half of the draws are still worth something. */
function nextHeat(gains: Float64Array, heat: number, particles: number): number {
	const worth = (next: number) => effectiveDraws(normalized(gains.map(gain => (next - heat) * gain)));
	if (worth(1) >= particles / 2) return 1;
	let [low, high] = [heat, 1];
	for (let halving = 0; halving < 30; halving++) {
		const middle = (low + high) / 2;
		if (worth(middle) >= particles / 2) low = middle;
		else high = middle;
	}
	return low;
}
