import { unitNamed } from '../units/names.ts';
import { isNumber, isObject } from './fault.ts';
import { halfNames, sorts } from './plugs.ts';
import { type SheetProblem, shown } from './problem.ts';
import { knownBy } from './sheet.ts';

/** No plug has more cavities, no car more plugs. */
const mostPins = 500;
const mostHalves = 60;

interface Field {
	readonly accepted: string;
	fits(value: unknown): boolean;
}

const text: Field = { accepted: 'a text of 1 to 200 characters', fits: value => isText(value) && value.trim() !== '' };
const free: Field = {
	accepted: 'a text of at most 1000 characters',
	fits: value => typeof value === 'string' && value.length <= 1000,
};
const yesNo: Field = { accepted: 'true or false', fits: value => typeof value === 'boolean' };
const oneOf = (...words: readonly string[]): Field => ({
	accepted: `one of ${words.join(', ')}`,
	fits: value => words.includes(value as string),
});
const isText = (value: unknown): value is string => typeof value === 'string' && value.length <= 200;

const halfFields: Readonly<Record<string, Field>> = {
	plug: text,
	half: oneOf(...halfNames),
	mates: text,
	mates_by: oneOf('pin', 'circuit'),
	from: free,
	view: oneOf('face', 'wires'),
	keyed: oneOf('mates', 'forced', 'not-tried'),
	lock: oneOf('holds', 'broken', 'missing'),
	outside: yesNo,
	pins: {
		accepted: `a list of pins, at most ${mostPins}`,
		fits: value => Array.isArray(value) && value.length <= mostPins,
	},
};

const pinFields: Readonly<Record<string, Field>> = {
	pin: { accepted: 'a text, like "14" or "A7"', fits: value => isText(value) && value.trim() !== '' },
	wire: free,
	circuit: free,
	gauge: { accepted: 'a gauge in AWG (-3 for 0000 to 40), or a text like "0.75 mm2"', fits: isGauge },
	joined: yesNo,
	known: oneOf(...knownBy),
	note: free,
	meets: text,
	fed_here: yesNo,
	sort: oneOf(...sorts),
	splice: text,
	terminal: {
		accepted: 'a blade width in mm, 0.1 to 30',
		fits: value => isNumber(value) && value >= 0.1 && value <= 30,
	},
	fused: {
		accepted: 'a rating in A over 0, "link", or false for none',
		fits: value => value === false || value === 'link' || (isNumber(value) && value > 0 && value <= 1000),
	},
	class: oneOf('A', 'B', 'C', 'D', 'GPT', 'HDT', 'GXL', 'SXL', 'TXL'),
	twisted: yesNo,
	seal: yesNo,
	grounded_at: oneOf('engine', 'controller', 'both', 'none'),
};

/** What is wrong with the plugs of a sheet, each with its place. */
export function* plugProblems(plugs: unknown): Generator<SheetProblem> {
	if (!Array.isArray(plugs) || plugs.length > mostHalves) {
		yield { path: 'plugs', found: shown(plugs), accepted: `a list of halves of plugs, at most ${mostHalves}` };
		return;
	}
	const seen = new Map<string, number>();
	for (const [at, half] of plugs.entries()) {
		const path = `plugs[${at}]`;
		yield* fieldProblems(half, path, halfFields, ['plug', 'half', 'pins'], 'a half of a plug');
		if (!isObject(half)) continue;
		const name = JSON.stringify([half.plug, half.half]);
		const before = seen.get(name);
		if (before !== undefined)
			yield {
				path,
				found: `the ${shown(half.half)} half of ${shown(half.plug)} again, as in plugs[${before}]`,
				accepted: 'each half of a plug once',
			};
		else seen.set(name, at);
		if (Array.isArray(half.pins))
			for (const [index, pin] of half.pins.slice(0, mostPins).entries())
				yield* fieldProblems(
					pin,
					`${path}.pins[${index}]`,
					pinFields,
					['pin'],
					'a pin, like {"pin": "14", "circuit": "coolant temperature"}',
				);
	}
}

function* fieldProblems(
	value: unknown,
	path: string,
	fields: Readonly<Record<string, Field>>,
	needed: readonly string[],
	what: string,
): Generator<SheetProblem> {
	if (!isObject(value)) {
		yield { path, found: shown(value), accepted: what };
		return;
	}
	for (const key of needed)
		if (!Object.hasOwn(value, key)) yield { path: `${path}.${key}`, found: 'nothing', accepted: fields[key]!.accepted };
	for (const key of Object.keys(value)) {
		const field = Object.hasOwn(fields, key) ? fields[key] : undefined;
		if (!field) yield { path: `${path}.${key}`, found: shown(key), accepted: `only ${Object.keys(fields).join(', ')}` };
		else if (!field.fits(value[key]))
			yield { path: `${path}.${key}`, found: shown(value[key]), accepted: field.accepted };
	}
}

/** A gauge as a number of AWG, or a text with its unit. */
function isGauge(value: unknown): boolean {
	if (isNumber(value)) return value >= -3 && value <= 40;
	return typeof value === 'string' && gaugeText(value) !== null;
}

/** A wire's size as a number and its unit: `0.75 mm2`, `18 AWG`; null where it is none. */
export function gaugeText(text: string): { readonly value: number; readonly unit: string } | null {
	const [, digits, word = ''] = /^\s*([-+]?\d+(?:[.,]\d+)?)\s*(\S.*)?$/.exec(text) ?? [];
	if (digits === undefined) return null;
	const value = Number(digits.replace(',', '.'));
	const unit =
		word === '' || /^(awg|ga|gauge)\.?$/i.test(word.trim()) ? 'AWG' : unitNamed(word.trim(), ['area'])?.symbol;
	if (unit === undefined) return null;
	const fits = unit === 'AWG' ? value >= -3 && value <= 40 : value > 0 && value <= 500;
	return fits ? { value, unit } : null;
}
