import { effectiveDraws } from './effective-draws.ts';
import { Hamiltonian, type State } from './hamiltonian.ts';
import { meanPoint } from './mean-point.ts';
import { type Mode, modeFrom, seenUnknowns } from './mode.ts';
import type { Problem } from './problem.ts';
import { type RandomSource, seededRandom } from './random.ts';
import type { Steps } from './steps.ts';

/** What is left of the prior after what was seen: equally likely draws of all unknowns. */
export interface Posterior {
	readonly mode: Mode;
	/** Unknowns that anything seen moves with. */
	readonly seen: readonly number[];
	/** How many independent draws they are worth: of the density and of each of those, for the one with the fewest. */
	readonly effective: number;
	readonly draws: readonly Float64Array[];
}

/** Chains, the states that each is continued by at a time, and the most states of one. */
const [chainCount, batch, maxLength] = [4, 125, 1500] as const;
/** The ratio of spreads R from which chains have not converged. Gelman et al. 2013, 11.4. */
const maxRatio = 1.1;
/** Random starts besides the center; a mode this far under the highest, as a logarithm, does not count. */
const [randomStarts, maxDrop] = [4, 10] as const;

/** Where draws begin: the most likely points, the highest first, and the unknowns that anything seen moves with. */
export interface Start {
	readonly mode: Mode;
	readonly modes: readonly Mode[];
	readonly seen: readonly number[];
	readonly random: RandomSource;
}

/** The most likely points, found from the center and from drawn starts; null where there is none. */
export function startOf(problem: Problem, seed: number): Start | null {
	const random = seededRandom(seed);
	const seen = seenUnknowns(problem, new Float64Array(problem.dimensions));
	const modes = modesOf(problem, seen, random);
	const [mode] = modes;
	return mode ? { mode, modes, seen, random } : null;
}

/**
 * `count` draws from what is left of the prior, by chains that begin at the most likely points and go on until they are worth
 * `enough` draws, or are long. Where they do not agree by then, most of what is likely lies aside of the mode, and what was worked
 * out about the mode leads badly: once more about the mean of what was found. Yields the share that is done. Null: the chains do
 * not agree then either.
 */
export function* drawFrom(
	problem: Problem,
	{ mode, modes, seen, random }: Start,
	count: number,
	enough: number,
): Steps<Posterior | null> {
	const begun = modes.map(({ point }) => point);
	let ran = yield* chainsAbout(problem, { center: mode.point, begun, seen, random, enough });
	if (!ran.agree) {
		const later = ran.chains.flatMap(chain => chain.slice(chain.length >> 1).map(({ point }) => point));
		const center = meanPoint(later, seen, mode.point);
		if (!problem.at(center)) return null;
		const begun = ran.chains.map(chain => chain.at(-1)!.point);
		ran = yield* chainsAbout(problem, { center, begun, seen, random, enough });
	}
	if (!ran.agree) return null;
	const states = shuffled(ran.chains.flat(), random);
	const draws = Array.from({ length: count }, (_, at) => complete(states[at % states.length]!.point, seen, random));
	return { mode, seen, effective: ran.effective, draws };
}

interface Chains {
	readonly chains: readonly (readonly State[])[];
	readonly effective: number;
	readonly agree: boolean;
}

/** Chains by a surrogate about `center`, from the points `begun`, until they agree and are worth `enough`, or are long. */
function* chainsAbout(
	problem: Problem,
	how: Pick<Start, 'seen' | 'random'> & { center: Float64Array; begun: readonly Float64Array[]; enough: number },
): Steps<Chains> {
	const { center, begun, seen, random, enough } = how;
	const sampler = new Hamiltonian(problem, seen, center);
	yield 0.1;
	const chains = Array.from({ length: chainCount }, (_, at): State[] => [
		sampler.settle(begun[at % begun.length]!, random),
	]);
	for (let share = 0.1; ; ) {
		for (let index = 0; index < batch; index++) {
			for (const chain of chains) chain.push(sampler.next(chain.at(-1)!, random));
			if (index % 5 === 0) yield share;
		}
		const { draws: effective, r } = worstOf(chains, seen);
		share = Math.max(share, 0.1 + 0.9 * Math.min(1, effective / enough));
		const agree = r < maxRatio;
		if ((agree && effective >= enough) || chains[0]!.length >= maxLength) return { chains, effective, agree };
	}
}

/** Effective draws and R for the worst figure: the density and each unknown. */
function worstOf(
	chains: readonly (readonly State[])[],
	unknowns: readonly number[],
): ReturnType<typeof effectiveDraws> {
	const along = chains.map(chain => new Float64Array(chain.length));
	let [draws, r] = [Number.POSITIVE_INFINITY, 0];
	for (let figure = -1; figure < unknowns.length; figure++) {
		for (const [at, chain] of chains.entries())
			for (let index = 0; index < chain.length; index++) {
				const { logDensity, point } = chain[index]!;
				along[at]![index] = figure < 0 ? logDensity : point[unknowns[figure]!]!;
			}
		const one = effectiveDraws(along);
		draws = Math.min(draws, one.draws);
		r = Math.max(r, one.r);
	}
	return { draws, r };
}

/** The modes found from the center and from drawn starts, the highest first, each once. */
function modesOf(problem: Problem, unknowns: readonly number[], random: RandomSource): Mode[] {
	const found = new Set<Mode>();
	for (let start = 0; start <= randomStarts; start++) {
		const from = new Float64Array(problem.dimensions);
		if (start > 0) for (const unknown of unknowns) from[unknown] = random.normal();
		const mode = modeFrom(problem, unknowns, from, found.values().next().value ?? null);
		if (mode) found.add(mode);
	}
	const sorted = [...found].sort((one, other) => other.logDensity - one.logDensity);
	return sorted.filter(({ logDensity }) => logDensity > sorted[0]!.logDensity - maxDrop);
}

/** The point with prior draws of all that nothing seen moves with. */
function complete(point: Float64Array, unknowns: readonly number[], random: RandomSource): Float64Array {
	const made = point.map(() => random.normal());
	for (const unknown of unknowns) made[unknown] = point[unknown]!;
	return made;
}

/** In random order: Fisher and Yates. */
function shuffled<T>(list: readonly T[], random: RandomSource): T[] {
	const made = [...list];
	for (let at = made.length - 1; at > 0; at--) {
		const other = Math.floor(random.uniform() * (at + 1));
		[made[at], made[other]] = [made[other]!, made[at]!];
	}
	return made;
}
