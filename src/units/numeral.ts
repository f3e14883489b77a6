/** An unbroken run of digits with points and commas inside. */
const run = /^[.,]?\d+(?:[.,]\d+)*/;
const power = /^e[+-]?\d{1,4}(?!\d)/i;
const fraction = /^(?:(\d{1,4})[ -])?(\d{1,4})\/(\d{1,4})(?!\d)/;

/** A number at the head of a text. */
export type Numeral = {
	/** What it can mean: one reading; two for `1,500`, thousands first; none for `1,5,2`. They may be infinite. */
	readonly readings: readonly number[];
	/** The text behind it. */
	readonly rest: string;
};

/** Reads the number that a `plainText` begins with: `-1,5`, `.035`, `3/8`, `1 1/2`, `2e3`. */
export function numeralAt(text: string): Numeral | undefined {
	const sign = /^[+-] ?/.exec(text)?.[0] ?? '';
	const body = text.slice(sign.length);
	const found = fractionAt(body) ?? decimalAt(body);
	if (!found) return undefined;
	// `+ 0` makes the zero of "-0" a plain one.
	const readings = sign.startsWith('-') ? found.readings.map(reading => -reading + 0) : found.readings;
	return { readings, rest: found.rest.trim() };
}

function fractionAt(text: string): Numeral | undefined {
	const [all, whole = '0', top, bottom] = fraction.exec(text) ?? [];
	if (all === undefined) return undefined;
	return { readings: [Number(whole) + Number(top) / Number(bottom)], rest: text.slice(all.length) };
}

function decimalAt(text: string): Numeral | undefined {
	const digits = run.exec(text)?.[0];
	if (digits === undefined) return undefined;
	// The point of `5.` says nothing.
	const behind = text.slice(digits.length).replace(/^\.(?!\d)/, '');
	const exponent = power.exec(behind)?.[0] ?? '';
	return {
		readings: pointed(digits).map(plain => Number(plain + exponent)),
		rest: behind.slice(exponent.length),
	};
}

/**
 * The run with a point for its decimals and no thousands marks, in each way that it can be meant.
 * `1,500` is 1500 to some and 1.5 to others. `0,035` is clear: nobody groups a leading zero.
 */
function pointed(run: string): string[] {
	const commas = run.split(',').length - 1;
	const points = run.split('.').length - 1;
	if (commas === 0 && points <= 1) return [run];
	if (/^[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/.test(run)) {
		const grouped = run.replaceAll(',', '');
		return commas === 1 && points === 0 ? [grouped, run.replace(',', '.')] : [grouped];
	}
	if (/^[1-9]\d{0,2}(\.\d{3})+(,\d+)?$/.test(run)) return [run.replaceAll('.', '').replace(',', '.')];
	return commas === 1 && points === 0 ? [run.replace(',', '.')] : [];
}
