import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import Ajv from 'ajv';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { outcomes } from '../../src/rulebook/compile/example.ts';
import { answerKinds, passes } from '../../src/rulebook/compile/question.ts';
import { harms, stages } from '../../src/rulebook/rulebook.ts';
import { efforts } from '../../src/sheet/question.ts';
import { canonicalUnits } from '../../src/units/kinds.ts';
import { everyTopic, oneTopic } from '../support/one-topic.ts';

const read = (path: string) => readFileSync(fileURLToPath(new URL(`../../${path}`, import.meta.url)), 'utf8');
const schema = JSON.parse(read('rules/topic.schema.json'));
const fits = new Ajv.default({ allErrors: true, allowUnionTypes: true }).compile(schema);
const { definitions } = schema;

test('every topic file and the demo pack fit the schema that editors complete by', () => {
	const topics = everyTopic();
	expect(topics.length).toBeGreaterThan(60);
	for (const { path, text } of [...topics, { path: 'pack', text: read('demo/packs/invented-family.yaml') }]) {
		expect(fits(parse(text)), `${path}: ${JSON.stringify(fits.errors)}`).toBe(true);
		const place = path === 'pack' ? '../../rules' : '..';
		expect(text.split('\n')[0], path).toBe(`# yaml-language-server: $schema=${place}/topic.schema.json`);
	}
});

describe('the schema knows what the compiler knows', () => {
	test('kinds, passes, efforts, stages, harms and outcomes', () => {
		const { question, rule, example } = definitions;
		expect(definitions.numberKind.enum).toEqual(Object.keys(canonicalUnits));
		expect([...definitions.numberKind.enum, ...definitions.otherKind.enum]).toEqual(answerKinds);
		expect(question.properties.pass.enum).toEqual(passes);
		expect(question.properties.effort.enum).toEqual(efforts);
		expect(rule.properties.stage.enum).toEqual(stages);
		expect(rule.properties.harm.enum).toEqual(harms);
		expect(example.properties.then.enum).toEqual(outcomes);
	});

	/**
	 * Puts a field that is none into each part of a topic; the compiler answers with those that are. A question for one
	 * number has no choices, no words for them, and no kinds of readings.
	 */
	const gap = oneTopic('ignition/gap.yaml');
	const strange = gap.text
		.replace('\nplace:', '\nzzz: 1\nprefills: [{answer: ignition.gap, value: 1 mm, zzz: 1}]\nplace:')
		.replace('    kind: length', '    zzz: 1\n    usual: {value: 1 mm, zzz: 1}\n    kind: length')
		.replace('    stage: boost', '    zzz: 1\n    stage: boost')
		.replace('then: holds}', 'then: holds, zzz: 1}')
		.concat('changes:\n  - {rule: fuel.worm-clamps, zzz: 1}\n');
	const found = gap
		.compile(strange)
		.problems.filter(({ message }) => message.includes('"zzz"'))
		.map(({ message }) =>
			message
				.replace(/^.*(?:fields are|can change) /, '')
				.split(', ')
				.sort(),
		);

	const named = (part: { properties: object }) => Object.keys(part.properties).sort();

	test.each([
		['a file', schema, []],
		['a question', definitions.question, ['choices', 'of', 'said', 'was']],
		['a usual value', definitions.usual, []],
		['a prefill', definitions.prefill, []],
		['a rule', definitions.rule, []],
		['an example', definitions.example, []],
		['a change', definitions.change, ['rule']],
	])('the fields of %s', (_, part, besides) => {
		expect(found.map(fields => [...fields, ...besides].sort())).toContainEqual(named(part));
	});

	test('and of nothing else', () => {
		expect(found.length).toBe(7);
	});
});

describe('a topic does not fit', () => {
	const topic = parse(oneTopic('ignition/gap.yaml').text);
	test.each([
		['with a field that is none', (one: typeof topic) => (one.colour = 'red')],
		['with a stage that is none', (one: typeof topic) => (one.rules[0].stage = 'someday')],
		['with a rule without examples', (one: typeof topic) => delete one.rules[0].examples],
		['with an id that is none', (one: typeof topic) => (one.questions[0].id = 'Ignition Gap')],
		['with a kind that is none', (one: typeof topic) => (one.questions[0].kind = 'elvish')],
		['without its place', (one: typeof topic) => delete one.place],
	])('%s', (_, spoil) => {
		const spoilt = structuredClone(topic);
		spoil(spoilt);
		expect(fits(topic)).toBe(true);
		expect(fits(spoilt)).toBe(false);
	});
});
