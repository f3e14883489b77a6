import { auditFormat, auditVersion, type Finding } from '../audit/audit.ts';
import { harms, stages } from '../rulebook/rulebook.ts';
import { efforts } from '../sheet/question.ts';
import { knownBy } from '../sheet/sheet.ts';

type Schema = Readonly<Record<string, unknown>>;

const text: Schema = { type: 'string' };
const texts: Schema = { type: 'array', items: text };
const number: Schema = { type: 'number' };
const yesNo: Schema = { type: 'boolean' };
const count: Schema = { type: 'integer', minimum: 0 };
const stage: Schema = { enum: stages };
const orNull = (schema: Schema): Schema => ({ anyOf: [schema, { type: 'null' }] });
/** Low, middle and high. */
const band: Schema = { type: 'array', items: number, minItems: 3, maxItems: 3 };
const bound: Schema = { enum: ['above', 'below', null] };

/** An object in which every key is always there. */
const whole = (properties: Readonly<Record<string, Schema>>): Schema => ({
	type: 'object',
	required: Object.keys(properties),
	properties,
});
const list = (properties: Readonly<Record<string, Schema>>): Schema => ({ type: 'array', items: whole(properties) });

const finding: Record<keyof Finding, Schema> = {
	rule: text,
	subject: orNull(text),
	section: text,
	stage,
	harm: { enum: harms },
	verdict: { enum: ['fails', 'holds', 'cannot-tell', 'does-not-apply', 'not-evaluated'] },
	unproved: yesNo,
	prove_during: yesNo,
	not_wanted: yesNo,
	covered_by: orNull(text),
	sure: orNull({ type: 'number', minimum: 0, maximum: 1 }),
	title: text,
	why: text,
	do: texts,
	prove: text,
	parts: texts,
	numbers: { type: 'object' },
	missing: texts,
	assumed: texts,
	cautions: texts,
	source: text,
	distance: orNull(number),
};

const readiness = {
	stage,
	ready: yesNo,
	fails: count,
	cannot_tell: count,
	unproved: count,
	prove_during: count,
	waits_for: { type: 'array', items: stage },
};

const quantity = {
	value: {},
	unit: orNull(text),
	low: orNull(number),
	high: orNull(number),
	bound,
	missing: texts,
	assumed: texts,
};

const limit = {
	limit: text,
	title: text,
	value: orNull(number),
	unit: text,
	low: orNull(number),
	high: orNull(number),
	bound,
	of_target: orNull(number),
	power: orNull(number),
	raise: text,
	missing: texts,
};

const reading = {
	state: { enum: ['key-on', 'cranking', 'idle', '3000-rpm', 'full-load'] },
	reading: text,
	title: text,
	value: orNull(number),
	unit: text,
	low: orNull(number),
	high: orNull(number),
	answer: orNull(text),
	measured: orNull(number),
	missing: texts,
	assumed: texts,
};

const fit = {
	days: texts,
	applied: yesNo,
	effective: count,
	moved: list({ id: text, unit: text, before: band, after: band }),
	unsettled: list({ limit: text, inputs: texts, measure: orNull(text) }),
	misfit: orNull(whole({ p: number, look_at: texts })),
	detects: list({ id: text, unit: text, least: number }),
	left_out: list({ log: text, look_at: texts }),
};

const since = {
	date: text,
	logs: list({ name: text, date: text, answers: texts }),
	changes: list({
		rule: text,
		subject: orNull(text),
		change: { enum: ['settled', 'new', 'worse', 'better', 'still', 'no-longer-tellable'] },
		by: { enum: ['answers', 'rules', null] },
	}),
	numbers: list({ name: text, unit: text, before: number, after: number }),
};

/** The JSON Schema of an audit, for other programs. Numbers are in the canonical units, words in the person's. */
export const auditSchema: Schema = {
	$schema: 'https://json-schema.org/draft/2020-12/schema', // the schema's own name, not a place that is looked up
	title: 'swap-audit audit',
	...whole({
		format: { const: auditFormat },
		version: { const: auditVersion },
		sheet: text,
		date: { type: 'string', pattern: '^\\d{4}-\\d{2}-\\d{2}$' },
		tool: text,
		rules: text,
		packs: list({ pack: text, prefills: texts, changes: list({ rule: text, fields: texts }) }),
		stages: list(readiness),
		findings: list(finding),
		quantities: { type: 'object', additionalProperties: whole(quantity) },
		limits: list(limit),
		next: list({
			answer: text,
			known: { enum: [...knownBy, null] },
			flips: texts,
			weight: number,
			effort: { enum: efforts },
			why: text,
		}),
		readings: list(reading),
		fit: orNull(whole(fit)),
		since: orNull(whole(since)),
	}),
};
