import { dot, eigen } from './matrix.ts';
import { curvatureOf, type Mode, type Slopes, slopesAt } from './mode.ts';
import { normalShare, type Problem } from './problem.ts';

/** Directions about which readings have less information than this share of the prior's count with the noise. */
const minInformation = 0.02;

/**
 * The chance that a right log lies as far from the answers as this one: small where it fits no car of them. Two sums of squares
 * are each chi-squared where answers, spreads and log are right: how far the few settled directions had to go from what the
 * answers say, and what is then left of the readings. The mean of each channel is normal about what the answers say of it.
 * Judged apart, so that neither many quiet readings nor all the other directions hide a sensor that is off: the smallest of the
 * three chances, times three (Bonferroni).
 *
 * @param channels by reading: what belongs together
 */
export function agreement(
	problem: Problem,
	unknowns: readonly number[],
	{ point, slopes }: Mode,
	channels: readonly string[],
): number {
	const seen = problem.at(point);
	if (!seen) return 0;
	const at = Float64Array.from(unknowns, unknown => point[unknown]!);
	const whole = dot(seen.residuals, seen.residuals) + dot(at, at);
	let [went, directions] = [0, 0];
	for (const { value, vector } of eigen(curvatureOf(slopes))) {
		if (value < minInformation) break;
		went += (dot(vector, at) ** 2 * (1 + value)) / value;
		directions++;
	}
	const left = Math.max(0, whole - went);
	const ofLeft = upperShare(left, Math.max(1, seen.residuals.length - directions));
	const all = [upperShare(went, directions), ofLeft, farthestChannel(problem, unknowns, channels)];
	return Math.min(1, all.length * Math.min(...all));
}

/** The chance of the channel whose mean lies farthest from what the answers say, with its sensor as far off as sensors are. */
function farthestChannel(problem: Problem, unknowns: readonly number[], channels: readonly string[]): number {
	const center = new Float64Array(problem.dimensions);
	const slopes = slopesAt(problem, unknowns, center);
	const residuals = problem.at(center)?.residuals.slice();
	if (!slopes || !residuals) return 1;
	const means = channelMeans(channels, slopes);
	const chances = [...means.values()].map(
		({ mean, deviation }) => 2 * normalShare(-Math.abs(mean(residuals)) / deviation),
	);
	return Math.min(1, means.size * Math.min(...chances));
}

/** By channel the mean over its readings, and the prior-predictive deviation of the mean of its residuals. */
function channelMeans(channels: readonly string[], { slopes }: Slopes) {
	return new Map(
		[...new Set(channels)].map(name => {
			const rows = channels.flatMap((channel, row) => (channel === name ? [row] : []));
			const mean = (values: Float64Array) => rows.reduce((sum, row) => sum + values[row]!, 0) / rows.length;
			const variance = slopes.reduce((sum, slope) => sum + mean(slope) ** 2, 1 / rows.length);
			return [name, { mean, deviation: Math.sqrt(variance) }];
		}),
	);
}

/** A channel whose mean lies so many prior-predictive standard deviations away is refused in nine of ten. */
const detectionDeviations = 5;

/**
 * By channel, how far its sensor has to be off, in its own standard deviations, to put the mean of the channel where a right
 * log does not lie: a smaller error cannot be distinguished from another car. A channel that its sensor does not move is left out.
 *
 * @param unknownOf the unknown of a channel's sensor; undefined where it has none
 */
export function leastShown(
	problem: Problem,
	unknowns: readonly number[],
	channels: readonly string[],
	unknownOf: (channel: string) => number | undefined,
): Map<string, number> {
	const found = slopesAt(problem, unknowns, new Float64Array(problem.dimensions));
	const least = new Map<string, number>();
	if (!found) return least;
	for (const [name, { mean, deviation }] of channelMeans(channels, found)) {
		const own = found.slopes[unknowns.indexOf(unknownOf(name) ?? -1)];
		const moves = own ? Math.abs(mean(own)) : 0;
		if (moves > 0) least.set(name, (detectionDeviations * deviation) / moves);
	}
	return least;
}

/** The share of chi-squared above a value. Wilson & Hilferty 1931. */
function upperShare(value: number, degrees: number): number {
	if (degrees === 0) return 1;
	const spread = 2 / (9 * degrees);
	return normalShare(-(Math.cbrt(value / degrees) - (1 - spread)) / Math.sqrt(spread));
}
