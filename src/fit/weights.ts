/** Weights that add up to 1, from their logarithms. */
export function normalized(logs: Float64Array): Float64Array {
	let most = Number.NEGATIVE_INFINITY;
	for (const one of logs) if (one > most) most = one;
	const weights = logs.map(one => (most === Number.NEGATIVE_INFINITY ? 0 : Math.exp(one - most)));
	const sum = weights.reduce((total, one) => total + one, 0);
	return weights.map(one => one / sum);
}

/** How many equally weighted draws they are worth: 1 / sum of squares. Kong 1992. */
export const effectiveDraws = (weights: Float64Array): number => 1 / weights.reduce((sum, one) => sum + one * one, 0);

/**
 * How heavy the tail of the weights is: the shape of a generalized Pareto distribution over the greatest of them. Over 0.7 the
 * sums converge too slowly to be believed. Zhang & Stephens 2009; Vehtari et al. 2024.
 */
export function paretoShape(weights: Float64Array): number {
	const count = weights.length;
	const tail = Math.ceil(Math.min(0.2 * count, 3 * Math.sqrt(count)));
	const sorted = weights.toSorted();
	const end = sorted[count - tail - 1]!;
	const over = sorted.subarray(count - tail).map(one => one - end);
	const largest = over[tail - 1]!;
	const quarter = over[Math.max(0, Math.floor(tail / 4 + 0.5) - 1)]!;
	if (!(quarter > 0) || !(largest > 0)) return Number.NEGATIVE_INFINITY;
	const grid = 20 + Math.floor(Math.sqrt(tail));
	const scales = Array.from(
		{ length: grid },
		(_, at) => 1 / largest + (1 - Math.sqrt(grid / (at + 0.5))) / (3 * quarter),
	);
	const shapeAt = (scale: number) => over.reduce((sum, one) => sum + Math.log1p(-scale * one), 0) / tail;
	const heights = scales.map(scale => {
		const shape = shapeAt(scale);
		return tail * (Math.log(-scale / shape) - shape - 1);
	});
	const share = scales.map((_, at) => 1 / heights.reduce((sum, height) => sum + Math.exp(height - heights[at]!), 0));
	const scale = scales.reduce((sum, one, at) => sum + one * share[at]!, 0);
	// Drawn a little towards 0.5, as by ten more points.
	return (shapeAt(scale) * tail + 10 * 0.5) / (tail + 10);
}

/** Places of `count` draws, as often as their weights say: evenly spread from one chance number. */
export function resampled(weights: Float64Array, count: number, start: number): Int32Array {
	const places = new Int32Array(count);
	let [at, sum] = [0, weights[0]!];
	for (let index = 0; index < count; index++) {
		const wanted = (index + start) / count;
		while (sum < wanted && at < weights.length - 1) sum += weights[++at]!;
		places[index] = at;
	}
	return places;
}
