/**
 * The number with this share of a sorted list under it: the mean of those about its place, weighted as that place itself
 * strays from sample to sample (Harrell & Davis 1982, their weights by the normal distribution). One place alone strays more.
 */
export function quantile(sorted: Float64Array, share: number): number {
	const place = share * sorted.length - 0.5;
	const spread = Math.sqrt(sorted.length * share * (1 - share));
	const first = Math.max(0, Math.ceil(place - 3 * spread));
	const last = Math.min(sorted.length - 1, Math.floor(place + 3 * spread));
	// Summed as differences, so that equal numbers come to exactly that number.
	const middle = sorted[Math.min(last, Math.max(first, Math.round(place)))]!;
	let [sum, weights] = [0, 0];
	for (let at = first; at <= last; at++) {
		const weight = Math.exp(-0.5 * ((at - place) / spread) ** 2);
		sum += weight * (sorted[at]! - middle);
		weights += weight;
	}
	return middle + sum / weights;
}
