import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import Ajv from 'ajv';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { harms, stages } from '../../src/rulebook/rulebook.ts';
import { kept } from '../../src/units/kinds.ts';
import { ruleTexts, testModel } from '../support/model.ts';

const read = (path: string) => readFileSync(fileURLToPath(new URL(`../../${path}`, import.meta.url)), 'utf8');
const schema = JSON.parse(read('rules/topic.schema.json'));
const fits = new Ajv.default({ allErrors: true, allowUnionTypes: true }).compile(schema);
const sections = testModel().rulebook.sections.map(({ id }) => `${id}/`);

test('every topic file and the demo pack fit the schema that editors complete by', () => {
	const topics = ruleTexts().filter(({ path }) => sections.some(section => path.startsWith(section)));
	expect(topics.length).toBeGreaterThan(60);
	for (const { path, text } of [...topics, { path: 'pack', text: read('demo/packs/invented-family.yaml') }]) {
		expect(fits(parse(text)), `${path}: ${JSON.stringify(fits.errors)}`).toBe(true);
		if (path !== 'pack') expect(text.split('\n')[0]).toBe('# yaml-language-server: $schema=../topic.schema.json');
	}
});

test('the schema knows the kinds, stages and harms that the compiler knows', () => {
	const said = JSON.stringify(schema);
	for (const word of [...Object.keys(kept), 'choice', 'several', 'whole', ...stages, ...harms]) {
		expect(said, word).toContain(`"${word}"`);
	}
});

test('a topic with a field that is none does not fit', () => {
	expect(fits({ topic: 'x', place: 1, colour: 'red' })).toBe(false);
});
