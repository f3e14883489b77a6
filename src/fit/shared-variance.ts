import { cholesky, dot, solveWith } from './matrix.ts';

/**
 * By unknown, the share of a figure's variance that goes with it over draws, so much as would go if it were known outright: the
 * square of their correlation. The figure is taken as a line in all unknowns at once (least squares), so that what the others do
 * is no noise: one correlation of 400 draws strays by 0.05, by which the third and the sixth of a limit change places.
 *
 * @param values the figure, by draw
 * @param draws the unknowns, by draw; more draws than figures where the others were not followed
 * @param unknowns those that may move it; draws of those not in `seen` go with no other
 */
export function sharedVariance(
	values: Float64Array,
	draws: readonly Float64Array[],
	unknowns: readonly number[],
	seen: ReadonlySet<number>,
): Float64Array {
	const size = unknowns.length;
	const followed = unknowns.map(unknown => column(draws.slice(0, values.length), unknown));
	const figure = centered(values);
	const square = followed.map((one, row) =>
		Float64Array.from(followed, (other, at) => dot(one, other) + (at === row ? ridge * values.length : 0)),
	);
	const factor = cholesky(square);
	if (!factor) return new Float64Array(size);
	const slopes = solveWith(
		factor,
		followed.map(one => dot(one, figure)),
	);
	const variance = dot(figure, figure) / values.length;
	const whole = unknowns.map(unknown => (seen.has(unknown) ? column(draws, unknown) : null));
	return Float64Array.from(unknowns, (_, at) => {
		const own = whole[at];
		if (!own) return slopes[at]! ** 2 / variance;
		let together = 0;
		for (let other = 0; other < size; other++) {
			const one = whole[other];
			if (one) together += (slopes[other]! * dot(own, one)) / draws.length;
		}
		const ofOwn = dot(own, own) / draws.length;
		return ofOwn > 0 ? together ** 2 / (ofOwn * variance) : 0;
	});
}

/** Added to each variance (ridge), so that unknowns which hardly move do not divide by nothing. */
const ridge = 1e-6;

const column = (draws: readonly Float64Array[], unknown: number): Float64Array =>
	centered(Float64Array.from(draws, draw => draw[unknown]!));

function centered(values: Float64Array): Float64Array {
	const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
	return values.map(one => one - mean);
}
