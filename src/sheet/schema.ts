import { unitsOf } from '../units/table.ts';
import { mostLogs } from './check-logs.ts';
import { type Field, halfFields, mostHalves, neededOfHalf, neededOfPin, pinFields } from './plug-fields.ts';
import type { Question } from './question.ts';
import { knownBy, sheetFormat, sheetVersion } from './sheet.ts';
import { textIn } from './text.ts';

type Schema = Record<string, unknown>;

/** A log that the program keeps. What stands in a figure and a point is its own business. */
const logSchema: Schema = {
	type: 'object',
	required: ['name', 'sha256', 'date', 'channels', 'quantities', 'points', 'answers', 'fit', 'rests_on'],
	properties: {
		name: { type: 'string' },
		sha256: { type: 'string', pattern: '^[0-9a-f]{64}$' },
		date: { type: 'string', pattern: '^\\d{4}-\\d{2}-\\d{2}$' },
		channels: {
			type: 'array',
			items: {
				type: 'object',
				required: ['channel', 'header', 'unit', 'by', 'lag'],
				properties: {
					channel: { type: 'string' },
					header: { type: 'string' },
					unit: { type: 'string' },
					by: { type: 'string' },
					lag: { type: ['number', 'null'], description: 's' },
				},
			},
		},
		quantities: { type: 'object' },
		points: { type: 'array' },
		answers: { type: 'object' },
		fit: { type: ['object', 'null'] },
		rests_on: { type: 'object' },
	},
};

/** The JSON Schema of a sheet, from the questions: for editors and other programs. The checks of this room say more. */
export function sheetSchema(questions: readonly Question[]): Schema {
	const sections = [...new Set(questions.map(({ id }) => id.split('.')[0]!))];
	const answersOf = (section: string) =>
		questions
			.filter(({ id }) => id.startsWith(`${section}.`))
			.map(question => [question.id.slice(section.length + 1), answerSchema(question)] as const);
	return {
		$schema: 'https://json-schema.org/draft/2020-12/schema',
		title: 'swap-audit sheet',
		type: 'object',
		required: ['format', 'version', 'answers'],
		properties: {
			format: { const: sheetFormat },
			version: { const: sheetVersion },
			name: { type: 'string', maxLength: 200 },
			units: { enum: ['us', 'metric'] },
			answers: {
				type: 'object',
				additionalProperties: false,
				properties: Object.fromEntries(
					sections.map(section => [
						section,
						{ type: 'object', additionalProperties: false, properties: Object.fromEntries(answersOf(section)) },
					]),
				),
			},
			plugs: {
				description: 'Halves of plugs, pin by pin.',
				type: 'array',
				maxItems: mostHalves,
				items: keyed(halfFields, neededOfHalf, {
					pins: { ...halfFields.pins!.schema, items: keyed(pinFields, neededOfPin) },
				}),
			},
			audits: { type: 'array' },
			logs: { type: 'array', maxItems: mostLogs, items: logSchema },
		},
	};
}

/** An object of these keys and no others. */
const keyed = (
	fields: Readonly<Record<string, Field>>,
	required: readonly string[],
	common: Readonly<Record<string, Schema>> = {},
): Schema => ({
	type: 'object',
	additionalProperties: false,
	required,
	properties: { ...Object.fromEntries(Object.entries(fields).map(([key, { schema }]) => [key, schema])), ...common },
});

function answerSchema(question: Question): Schema {
	const needsUnit = question.of.length > 0 && !['1', ':1'].includes(question.unit.us[0] ?? '');
	const common = {
		...(question.of.length > 0 ? { unit: unitSchema(question) } : {}),
		spread: { type: 'number', minimum: 0 },
		note: { type: 'string' },
	};
	const known: Schema = {
		type: 'object',
		additionalProperties: false,
		required: ['value', ...(needsUnit ? ['unit'] : [])],
		properties: {
			value: valueSchema(question),
			known: { enum: knownBy.filter(known => known !== 'not-known') },
			...common,
		},
	};
	const notKnown = {
		type: 'object',
		additionalProperties: false,
		required: ['known'],
		properties: { known: { const: 'not-known' }, ...common },
	};
	return { description: textIn(question.ask, 'us'), oneOf: [known, notKnown] };
}

/** Units by their own names; the other spellings that shops use are read too. */
function unitSchema({ of, takes }: Question): Schema {
	const examples = of.map((kind, index) => [
		...unitsOf(kind),
		...(takes && index === of.length - 1 ? unitsOf(takes.kind) : []),
	]);
	const one = (units: (typeof examples)[number]) => ({ type: 'string', examples: units.map(({ symbol }) => symbol) });
	return examples.length === 1
		? one(examples[0]!)
		: { type: 'array', prefixItems: examples.map(one), minItems: examples.length, maxItems: examples.length };
}

const pair = (first: Schema, second: Schema): Schema => ({
	type: 'array',
	prefixItems: [first, second],
	minItems: 2,
	maxItems: 2,
});

function valueSchema({ kind, choices, wasChoice }: Question): Schema {
	const number = { type: 'number' };
	const cylinder = { type: 'integer', minimum: 1 };
	switch (kind) {
		case 'choice':
			return { enum: Object.keys(choices) };
		case 'several': {
			const one = { enum: Object.keys(choices) };
			const list = { type: 'array', uniqueItems: true, items: one };
			return wasChoice ? { oneOf: [one, list] } : list;
		}
		case 'whole':
			return { type: 'integer' };
		case 'per-cylinder':
			return { type: 'array', items: { type: ['number', 'null'] } };
		case 'firing-order':
			return { type: 'array', uniqueItems: true, items: cylinder };
		case 'pairs':
			return { type: 'array', minItems: 1, items: pair(cylinder, cylinder) };
		case 'curve':
			return { type: 'array', minItems: 2, items: pair(number, number) };
		case 'loads':
			return { type: 'array', items: pair({ type: 'string' }, number) };
		case 'codes':
			return { type: 'array', items: { type: 'string', pattern: '^[PBCU][0-3][0-9A-F]{3}$' } };
		case 'circuits':
			return {
				type: 'array',
				items: {
					type: 'object',
					additionalProperties: false,
					required: ['circuit', 'state'],
					properties: {
						circuit: { type: 'string' },
						from: { type: 'string' },
						to: { type: 'string' },
						state: { enum: ['done', 'to-do', 'not-used'] },
						load: { type: 'number', description: 'A' },
						length: { type: 'number', description: 'ft' },
					},
				},
			};
		case 'teeth':
			return { type: 'string', pattern: '^\\d{1,3}-\\d{1,2}$' };
		default:
			return number;
	}
}
