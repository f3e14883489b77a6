/** What a point comes to: readings against the model, and facts that held. */
export interface Seen {
	/** Of each reading: it less what the model says, over its standard deviation. */
	readonly residuals: Float64Array;
	/** Of each fact: how far it is on the side that it showed, over how sharp the line is. */
	readonly margins: Float64Array;
}

/** What is fitted: unknowns that are standard normal by themselves, and what was seen of them. */
export interface Problem {
	readonly dimensions: number;
	/** Of each fact: the chance that it is stated although it is not so. */
	readonly doubts: readonly number[];
	/** Unknowns that anything seen could move with; the others never do. */
	readonly candidates: readonly number[];
	/** What is seen at a point; null where the model cannot be evaluated. The object may be used again for the next point. */
	at(point: Float64Array): Seen | null;
}

/** The logarithm of the likelihood, up to a constant; minus infinity where the model cannot be evaluated. */
export function logLikelihood({ doubts }: Pick<Problem, 'doubts'>, seen: Seen | null): number {
	if (!seen) return Number.NEGATIVE_INFINITY;
	let sum = 0;
	for (const residual of seen.residuals) sum -= (residual * residual) / 2;
	for (const [at, doubt] of doubts.entries()) sum += logOfFact(doubt, seen.margins[at]!);
	return sum;
}

/** The logarithm of the chance that a log shows a fact, by its margin. */
export const logOfFact = (doubt: number, margin: number): number => Math.log(doubt + (1 - doubt) * normalShare(margin));

/** How that rises with the margin. */
export function slopeOfFact(doubt: number, margin: number): number {
	const density = Math.exp((-margin * margin) / 2) / Math.sqrt(2 * Math.PI);
	return ((1 - doubt) * density) / (doubt + (1 - doubt) * normalShare(margin));
}

/** The share of a standard normal below a deviate, within 1.5e-7. Abramowitz & Stegun 7.1.26. */
export function normalShare(deviate: number): number {
	const x = Math.abs(deviate) / Math.SQRT2;
	const t = 1 / (1 + 0.3275911 * x);
	const series = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
	const tail = (series * Math.exp(-x * x)) / 2;
	return deviate > 0 ? 1 - tail : tail;
}
