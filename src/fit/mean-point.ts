/** The mean of points in some unknowns; the others are as in `elsewhere`. */
export function meanPoint(
	points: readonly Float64Array[],
	unknowns: readonly number[],
	elsewhere: Float64Array,
): Float64Array {
	const mean = elsewhere.slice();
	for (const unknown of unknowns)
		mean[unknown] = points.reduce((sum, point) => sum + point[unknown]!, 0) / points.length;
	return mean;
}
