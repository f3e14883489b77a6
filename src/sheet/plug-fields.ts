import { isNumber } from './fault.ts';
import { readGauge } from './gauge.ts';
import { halfNames, sorts } from './plugs.ts';
import { knownBy } from './sheet.ts';

/** No plug has more cavities, no car more plugs. */
export const mostPins = 500;
export const mostHalves = 60;

/** What a key of a half or a pin takes: in words, as a check, as a JSON Schema. */
export interface Field {
	readonly accepted: string;
	readonly schema: Readonly<Record<string, unknown>>;
	fits(value: unknown): boolean;
}

const isText = (value: unknown, most: number): value is string => typeof value === 'string' && value.length <= most;

const name: Field = {
	accepted: 'a text of 1 to 200 characters',
	schema: { type: 'string', maxLength: 200, pattern: '\\S' },
	fits: value => isText(value, 200) && value.trim() !== '',
};
const words: Field = {
	accepted: 'a text of at most 1000 characters',
	schema: { type: 'string', maxLength: 1000 },
	fits: value => isText(value, 1000),
};
const yesNo: Field = {
	accepted: 'true or false',
	schema: { type: 'boolean' },
	fits: value => typeof value === 'boolean',
};
const oneOf = (...choices: readonly string[]): Field => ({
	accepted: `one of ${choices.join(', ')}`,
	schema: { enum: choices },
	fits: value => choices.includes(value as string),
});

/** The keys of a half of a plug. */
export const halfFields: Readonly<Record<string, Field>> = {
	plug: name,
	half: oneOf(...halfNames),
	mates: name,
	mates_by: oneOf('pin', 'circuit'),
	from: words,
	view: oneOf('face', 'wires'),
	keyed: oneOf('mates', 'forced', 'not-tried'),
	lock: oneOf('holds', 'broken', 'missing'),
	outside: yesNo,
	pins: {
		accepted: `a list of pins, at most ${mostPins}`,
		schema: { type: 'array', maxItems: mostPins },
		fits: value => Array.isArray(value) && value.length <= mostPins,
	},
};

/** The keys of a pin. */
export const pinFields: Readonly<Record<string, Field>> = {
	pin: { ...name, accepted: 'a text, like "14" or "A7"' },
	wire: words,
	circuit: words,
	gauge: {
		accepted: 'a whole gauge in AWG (-3 is 4/0), or a text like "2/0" or "0.75 mm2"',
		schema: {
			oneOf: [
				{ type: 'integer', minimum: -3, maximum: 40 },
				{ type: 'string', pattern: '\\d', examples: ['2/0', '0.75 mm2'] },
			],
		},
		fits: value => readGauge(value) !== null,
	},
	joined: yesNo,
	known: oneOf(...knownBy),
	note: words,
	meets: name,
	fed_here: yesNo,
	sort: oneOf(...sorts),
	splice: name,
	terminal: {
		accepted: 'a blade width in mm, 0.1 to 30',
		schema: { type: 'number', minimum: 0.1, maximum: 30, description: 'mm' },
		fits: value => isNumber(value) && value >= 0.1 && value <= 30,
	},
	fused: {
		accepted: 'a rating in A over 0, "link", or false for none',
		schema: {
			oneOf: [{ type: 'number', exclusiveMinimum: 0, maximum: 1000, description: 'A' }, { enum: ['link', false] }],
		},
		fits: value => value === false || value === 'link' || (isNumber(value) && value > 0 && value <= 1000),
	},
	class: oneOf('A', 'B', 'C', 'D', 'GPT', 'HDT', 'GXL', 'SXL', 'TXL'),
	twisted: yesNo,
	seal: yesNo,
	grounded_at: oneOf('engine', 'controller', 'both', 'none'),
};

/** Keys that cannot be left out. */
export const neededOfHalf = ['plug', 'half', 'pins'] as const;
export const neededOfPin = ['pin'] as const;
