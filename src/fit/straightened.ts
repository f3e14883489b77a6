import { cholesky, dot, identity, type Square, solveWith } from './matrix.ts';
import type { Surrogate } from './surrogate.ts';

/** An unknown with which residuals stray so far from a line within two deviations bends. */
const bent = 2;

/**
 * The density of a surrogate in coordinates in which its ridge is straight: where residuals bend with an unknown (a band to one
 * side, a square), the unknowns that do not bend give way by as much. Some are shifted by what others are: volumes stay.
 */
export class Straightened {
	/** By unknown: how residuals move with it, the mean of both sides. */
	readonly slopes: readonly Float64Array[];
	private readonly surrogate: Surrogate;
	private readonly bends: readonly number[];
	private readonly others: readonly number[];
	/** The factor of J Jt + 1, J the slopes of those that give way: they do as the ridge regression on a bend says. */
	private readonly factor: Square;
	private readonly point: Float64Array;
	private readonly sum: Float64Array;
	/** The residuals' part of that. */
	private readonly ofResiduals: Float64Array;
	private readonly way: Float64Array;

	constructor(surrogate: Surrogate) {
		this.surrogate = surrogate;
		const all = [...surrogate.unknowns.keys()];
		const alone = (unknown: number, to: number) => {
			const outputs = new Float64Array(surrogate.slopes[unknown]!.length);
			surrogate.add(unknown, to, outputs);
			return outputs.subarray(0, surrogate.directions);
		};
		this.slopes = all.map(unknown => {
			const below = alone(unknown, -1);
			return alone(unknown, 1).map((one, at) => (one - below[at]!) / 2);
		});
		const bendsAt = (unknown: number, to: number) => {
			const bend = alone(unknown, to);
			addTimes(-to, this.slopes[unknown]!, bend);
			return Math.sqrt(dot(bend, bend)) > bent;
		};
		this.bends = all.filter(unknown => [-2, -1, 1, 2].some(to => bendsAt(unknown, to)));
		this.others = all.filter(unknown => !this.bends.includes(unknown));
		const square = identity(surrogate.directions);
		for (const other of this.others)
			for (const [row, by] of this.slopes[other]!.entries())
				for (const [column, value] of this.slopes[other]!.entries()) square[row]![column]! += by * value;
		this.factor = cholesky(square)!;
		this.point = new Float64Array(all.length);
		this.sum = new Float64Array(surrogate.slopes[0]?.length ?? 0);
		this.ofResiduals = this.sum.subarray(0, surrogate.directions);
		this.way = new Float64Array(surrogate.directions);
	}

	/** The coordinates of a point, by unknown. */
	of(point: Float64Array, into: Float64Array): void {
		into.set(point);
		this.giveWay(into, -1);
	}

	/** The point at coordinates; the same array each time. */
	at(coordinates: Float64Array): Float64Array {
		this.point.set(coordinates);
		this.giveWay(this.point, 1);
		return this.point;
	}

	/** The logarithm of the density at coordinates, up to a constant; its slopes are written to `gradient`. */
	height(coordinates: Float64Array, gradient: Float64Array): number {
		const { surrogate, bends, others, slopes, factor } = this;
		const point = this.at(coordinates);
		const height = surrogate.logLikelihood(point, gradient) - dot(point, point) / 2;
		for (let at = 0; at < point.length; at++) gradient[at]! -= point[at]!;
		if (bends.length === 0) return height;
		const pushed = this.ofResiduals.fill(0);
		for (const other of others) addTimes(gradient[other]!, slopes[other]!, pushed);
		const way = solveWith(factor, pushed, this.way);
		for (const unknown of bends)
			gradient[unknown]! -= dot(way, surrogate.slopes[unknown]!) - dot(way, slopes[unknown]!);
		return height;
	}

	/** Shifts the others against the bends (`sign` 1), or back. */
	private giveWay(point: Float64Array, sign: number): void {
		if (this.bends.length === 0) return;
		const { surrogate, slopes, bends, others } = this;
		const sum = this.sum.fill(0);
		const bend = this.ofResiduals;
		for (const unknown of bends) {
			surrogate.add(unknown, point[unknown]!, sum);
			addTimes(-point[unknown]!, slopes[unknown]!, bend);
		}
		const way = solveWith(this.factor, bend, this.way);
		for (const other of others) point[other]! -= sign * dot(way, slopes[other]!);
	}
}

function addTimes(times: number, what: Float64Array, to: Float64Array): void {
	for (let at = 0; at < to.length; at++) to[at]! += times * what[at]!;
}
