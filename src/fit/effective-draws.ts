/**
 * How many independent draws the draws of several chains of one length are worth for one figure, and whether the chains agree:
 * each is halved; R compares the spread within with that of all, 1 where they agree (Gelman et al. 2013, 11.4 and 11.5); the
 * autocorrelation is summed while pairs of it fall and are above 0 (Geyer 1992).
 */
export function effectiveDraws(chains: readonly Float64Array[]): { readonly draws: number; readonly r: number } {
	const halves = chains.flatMap(chain => {
		const half = chain.length >> 1;
		return [chain.subarray(0, half), chain.subarray(chain.length - half)];
	});
	const [count, length] = [halves.length, halves[0]!.length];
	const means = halves.map(meanOf);
	const whole = meanOf(means);
	// What is left of each half beyond its mean: it is multiplied with itself at every lag.
	const beyond = halves.map((half, at) => half.map(value => value - means[at]!));
	const covariance = (lag: number): number => meanOf(beyond.map(half => laggedSum(half, lag) / length));
	const within = (covariance(0) * length) / (length - 1);
	const between = means.reduce((sum, mean) => sum + (mean - whole) ** 2, 0) / (count - 1);
	const all = covariance(0) + between;
	if (!(within > 0)) return { draws: 0, r: Number.POSITIVE_INFINITY };
	const correlation = (lag: number): number => 1 - (within - covariance(lag)) / all;
	let [sum, least] = [-1, Number.POSITIVE_INFINITY];
	for (let lag = 0; lag + 1 < length; lag += 2) {
		const pair = (lag === 0 ? 1 : correlation(lag)) + correlation(lag + 1);
		if (pair < 0) break;
		least = Math.min(least, pair);
		sum += 2 * least;
	}
	const drawn = count * length;
	return { draws: Math.min(drawn, drawn / sum), r: Math.sqrt(all / within) };
}

const meanOf = (values: ArrayLike<number>): number => {
	let sum = 0;
	for (let at = 0; at < values.length; at++) sum += values[at]!;
	return sum / values.length;
};

function laggedSum(values: Float64Array, lag: number): number {
	let sum = 0;
	for (let index = lag; index < values.length; index++) sum += values[index]! * values[index - lag]!;
	return sum;
}
