/** What a US-trade figure of the rules' own words is in the metric set: unit and factor, both exact by definition of the units. */
const metric: Readonly<Record<string, readonly [unit: string, factor: number]>> = {
	in: ['mm', 25.4],
	ft: ['m', 0.3048],
	psi: ['bar', 0.0689475729],
	mph: ['km/h', 1.609344],
	'lb-ft': ['N m', 1.3558179483],
	hp: ['kW', 0.7456998716],
	lb: ['kg', 0.45359237],
};

const number = '(?:\\d+ )?\\d+/\\d+|\\d+(?:\\.\\d+)?';
/** A figure with its unit, or several that share one: `6 to 10 psi`, `30 and 60 mph`. `3 in a row` is no length. */
const figures = new RegExp(
	`(?<![\\w./{-])((?:${number})(?:(?:,| to| and| or) (?:${number}))*) (lb-ft|psi|mph|degF|hp|ft|lb|in)(?![\\w/-])(?! (?:a|the|each|every|\\d+)\\b)`,
	'g',
);
const eachFigure = new RegExp(number, 'g');
/** Words before a figure that make it a difference of two temperatures. */
const difference = /(?:within|no more than|by about) $/;

/** The words of a rule for somebody who reads metric: what they say in US-trade units is said in metric ones, rounded like it. */
export function inMetric(text: string): string {
	return text.replace(figures, (_found, list: string, unit: string, at: number) => {
		const convert =
			unit === 'degF' ? fahrenheit(difference.test(text.slice(0, at))) : (value: number) => value * metric[unit]![1];
		const shown = list.replace(eachFigure, one => String(rounded(convert(figureOf(one)))));
		return `${shown} ${unit === 'degF' ? 'degC' : metric[unit]![0]}`;
	});
}

const fahrenheit =
	(isDifference: boolean) =>
	(value: number): number =>
		(isDifference ? value : value - 32) / 1.8;

/** `1 1/2`, `3/4`, `0.06`. */
function figureOf(written: string): number {
	return written
		.split(' ')
		.map(part => part.split('/').map(Number))
		.reduce((sum, [over = 0, under = 1]) => sum + over / under, 0);
}

/** A rounded figure stays one: whole from ten up, two digits below. */
const rounded = (value: number): number => (Math.abs(value) >= 10 ? Math.round(value) : Number(value.toPrecision(2)));
