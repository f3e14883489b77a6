/** The powers of ten that a number holds exactly, by their exponent. */
const powers = Array.from({ length: 23 }, (_, exponent) => Number(`1e${exponent}`));

/**
 * The number of so many significant digits, at most 15, that is nearest: `Number(value.toPrecision(digits))` without making a text,
 * which takes thirty times as long. Where the digits are a whole number over a power of ten, both are exact, and so their quotient
 * is the number that those digits are read as.
 */
export function significant(value: number, digits: number): number {
	const size = Math.abs(value);
	const power = powers[digits - 1 - Math.floor(Math.log10(size))];
	if (power !== undefined) {
		const scaled = size * power;
		const whole = Math.round(scaled);
		// The product is off by its own rounding: near a half that would decide, and the logarithm may be one off.
		const isClear = Math.abs(scaled - whole) < 0.5 - scaled * Number.EPSILON;
		if (isClear && scaled >= powers[digits - 1]! && scaled < powers[digits]!)
			return (value < 0 ? -whole : whole) / power;
	}
	return Number(value.toPrecision(digits));
}
