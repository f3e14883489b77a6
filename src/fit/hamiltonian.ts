import { cholesky, dot, identity, type Square, solveWith } from './matrix.ts';
import { curvatureOf } from './mode.ts';
import { logLikelihood, type Problem } from './problem.ts';
import type { RandomSource } from './random.ts';
import { Straightened } from './straightened.ts';
import { Surrogate } from './surrogate.ts';

/** Where a chain is. */
export interface State {
	readonly point: Float64Array;
	/** The logarithm of its density by the model, up to a constant. */
	readonly logDensity: number;
	/** The same by the surrogate, and the coordinates it has there. */
	readonly surrogateLogDensity: number;
	readonly at: Float64Array;
}

/** Kicks of a trajectory, at first and at most, and the acceptance by the surrogate from which they are enough. */
const [minKicks, maxKicks, targetAcceptance] = [4, 64, 0.85] as const;
/** Trajectories from which that acceptance is estimated. */
const trialCount = 16;
/** The longest step of a walk, rad. */
const maxAngle = 0.8;

/**
 * Hamiltonian Monte Carlo (Neal 2011) on a surrogate, each trajectory accepted or not by the model (Liu 2001, 9.4.3), and after
 * it a step by the model alone: what is drawn is what the model says, for two evaluations of it a draw. The normal distribution
 * about the mode is followed exactly, what differs from it kicks (Shahbaba et al. 2014): a quarter of a turn is an independent draw.
 * Other samplers that were tried are in tests/bench/README.md.
 */
export class Hamiltonian {
	private readonly problem: Problem;
	private readonly unknowns: readonly number[];
	private readonly straightened: Straightened;
	private readonly middle: Float64Array;
	/** C of the spread C Ct about the mode. */
	private readonly spread: Square;
	private kicks: number = minKicks;
	// Where a trajectory is, in deviations of that normal distribution, and its momentum; what kicks it.
	private readonly at: Float64Array;
	private readonly momentum: Float64Array;
	private readonly force: Float64Array;
	private readonly coordinates: Float64Array;
	private readonly slopes: Float64Array;

	/** `point`: what the surrogate is made about. */
	constructor(problem: Problem, unknowns: readonly number[], point: Float64Array) {
		const size = () => new Float64Array(unknowns.length);
		this.problem = problem;
		this.unknowns = unknowns;
		this.straightened = new Straightened(new Surrogate(problem, unknowns, point));
		this.middle = size();
		this.straightened.of(this.seenOf(point), this.middle);
		const precision = curvatureOf(this.straightened.slopes).map((row, at) => row.with(at, row[at]! + 1));
		const factor = cholesky(precision)!;
		this.spread = cholesky(identity(unknowns.length).map(row => solveWith(factor, row)))!;
		[this.at, this.momentum, this.force, this.coordinates, this.slopes] = [size(), size(), size(), size(), size()];
	}

	/**
	 * The first state of a chain: one that the surrogate has as likely, from a point. How many kicks its trajectories need is
	 * found out on the way.
	 */
	settle(from: Float64Array, random: RandomSource): State {
		const { at, coordinates, middle, spread } = this;
		this.straightened.of(this.seenOf(from), coordinates);
		for (let row = 0; row < at.length; row++) {
			let rest = coordinates[row]! - middle[row]!;
			for (let column = 0; column < row; column++) rest -= spread[row]![column]! * at[column]!;
			at[row] = rest / spread[row]![row]!;
		}
		let surrogateLogDensity = this.look();
		for (;;) {
			let acceptance = 0;
			for (let index = 0; index < trialCount; index++) {
				const end = this.trajectory(surrogateLogDensity, random);
				acceptance += end.acceptance / trialCount;
				surrogateLogDensity = end.surrogateLogDensity;
			}
			if (acceptance >= targetAcceptance || this.kicks >= maxKicks) return this.stateHere(from, surrogateLogDensity);
			this.kicks *= 2;
		}
	}

	/** The next state of a chain. */
	next(now: State, random: RandomSource): State {
		return this.walk(this.lead(now, random), random);
	}

	/** Where a trajectory leads, if the model accepts it. */
	private lead(now: State, random: RandomSource): State {
		this.at.set(now.at);
		const { moved, surrogateLogDensity } = this.trajectory(this.look(), random);
		if (!moved) return now;
		const end = this.stateHere(now.point, surrogateLogDensity);
		const gain = end.logDensity - end.surrogateLogDensity - (now.logDensity - now.surrogateLogDensity);
		return Math.log(random.uniform()) < gain ? end : now;
	}

	/**
	 * A step by the model alone, short as often as not (preconditioned Crank-Nicolson, Cotter et al. 2013): it leads out of what
	 * the model has as much more likely than the surrogate does, where a chain would stay for long.
	 */
	private walk(now: State, random: RandomSource): State {
		const angle = maxAngle * random.uniform();
		const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
		for (let row = 0; row < this.at.length; row++) this.at[row] = cosine * now.at[row]! + sine * random.normal();
		const end = this.stateHere(now.point, this.look());
		const over = ({ logDensity, at }: State) => logDensity + dot(at, at) / 2;
		return Math.log(random.uniform()) < over(end) - over(now) ? end : now;
	}

	private seenOf(point: Float64Array): Float64Array {
		return Float64Array.from(this.unknowns, unknown => point[unknown]!);
	}

	/** The state where the trajectories are; unknowns that nothing seen moves with are as in `from`. */
	private stateHere(from: Float64Array, surrogateLogDensity: number): State {
		const { problem, unknowns } = this;
		this.place();
		const there = this.straightened.at(this.coordinates);
		const point = from.slice();
		for (const [row, unknown] of unknowns.entries()) point[unknown] = there[row]!;
		const logDensity = logLikelihood(problem, problem.at(point)) - dot(there, there) / 2;
		return { point, logDensity, surrogateLogDensity, at: this.at.slice() };
	}

	/** One trajectory by the surrogate alone: it stays where it ends, or goes back. */
	private trajectory(surrogateLogDensity: number, random: RandomSource) {
		const { at, momentum, force, kicks } = this;
		const [keptAt, keptForce] = [at.slice(), force.slice()];
		for (let row = 0; row < at.length; row++) momentum[row] = random.normal();
		const before = surrogateLogDensity - dot(momentum, momentum) / 2;
		const angle = ((Math.PI / 2) * (0.8 + 0.4 * random.uniform())) / kicks;
		const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
		let logDensity = surrogateLogDensity;
		for (let kick = 0; kick < kicks; kick++) {
			for (let row = 0; row < at.length; row++) {
				const pushed = momentum[row]! + (angle / 2) * force[row]!;
				const here = at[row]!;
				at[row] = here * cosine + pushed * sine;
				momentum[row] = pushed * cosine - here * sine;
			}
			logDensity = this.look();
			for (let row = 0; row < at.length; row++) momentum[row]! += (angle / 2) * force[row]!;
		}
		const gain = logDensity - dot(momentum, momentum) / 2 - before;
		const acceptance = Number.isNaN(gain) ? 0 : Math.min(1, Math.exp(gain));
		if (random.uniform() < acceptance) return { moved: true, surrogateLogDensity: logDensity, acceptance };
		at.set(keptAt);
		force.set(keptForce);
		return { moved: false, surrogateLogDensity, acceptance };
	}

	/** The coordinates of where the trajectory is. */
	private place(): void {
		const { at, coordinates, middle, spread } = this;
		for (let row = 0; row < at.length; row++) {
			const of = spread[row]!;
			let sum = middle[row]!;
			for (let column = 0; column <= row; column++) sum += of[column]! * at[column]!;
			coordinates[row] = sum;
		}
	}

	/** The height where the trajectory is, by the surrogate, and the force besides that of the normal distribution. */
	private look(): number {
		const { at, coordinates, spread, slopes, force } = this;
		this.place();
		const logDensity = this.straightened.height(coordinates, slopes);
		force.set(at);
		for (let row = 0; row < at.length; row++) {
			const of = spread[row]!;
			const slope = slopes[row]!;
			for (let column = 0; column <= row; column++) force[column]! += of[column]! * slope;
		}
		return logDensity;
	}
}
