/**
 * A converted figure, rounded as a person would who says the first one in the other units: the roundest number that is
 * no further off than the first was rough. `4` in is 100 mm, `43.5` psi is 3 bar, `1/2` in is 13 mm.
 * `isTemperature` counts in degrees, because 0 degC is not nothing. `most`: as a share, how far off it may be at the most.
 */
export function roundLike(value: number, written: string, isTemperature: boolean, most = another): number {
	if (value === 0) return 0;
	const rough = written.includes('/') ? fraction : roughness(written);
	const off = isTemperature
		? Math.min(Math.max(rough * Number(written) * perDegree, leastDegrees), mostDegrees)
		: Math.min(rough, most) * Math.abs(value);
	for (let power = Math.floor(Math.log10(Math.abs(value))) + 1; power > -9; power--) {
		for (const digit of [5, 2, 1]) {
			const step = digit * 10 ** power;
			const round = Math.round(value / step) * step;
			if (round !== 0 && Math.abs(round - value) <= off) return Number(round.toPrecision(6));
		}
	}
	return value;
}

/** As a share: further off than this a figure is another one. */
const another = 0.04;
/** As a share: fractions of an inch are told apart by drill and hose sizes. */
const fraction = 0.03;
/** degC: no gauge of a car shows less, and no text means more. */
const leastDegrees = 1.2;
const mostDegrees = 2.3;
/** degC in a degF, for how rough a temperature was said. */
const perDegree = 1 / 1.8;

/** Half of the last place that counts, as a share: 0.05 of 10, 0.005 of 1.0 or 10.0. Zeros at the end do not count. */
function roughness(written: string): number {
	const digits = written.replace('.', '').replace(/^0+/, '').replace(/0+$/, '');
	return digits === '' ? 0 : 0.5 / Number(digits);
}
