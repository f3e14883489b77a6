import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sheetSchema } from '../../src/sheet/schema.ts';
import { textIn } from '../../src/sheet/text.ts';
import { seed } from '../counts.ts';
import { anySheet } from '../quantities/any-sheet.ts';
import { buildSheet, testModel } from '../support/model.ts';
import { answered, changed, problemsOf } from './problems.ts';

const { questions } = testModel().rulebook;
const fits = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(sheetSchema(questions));

describe('the schema of a sheet', () => {
	test('takes the full builds, and any sheet that the checks take', () => {
		for (const build of ['boosted', 'unboosted'] as const) expect(fits(buildSheet(build)), build).toBe(true);
		fc.assert(
			fc.property(anySheet(questions, 'plausible'), sheet => fits(JSON.parse(JSON.stringify(sheet)))),
			{ seed, numRuns: 30 },
		);
	});

	test('has every question, with its words', () => {
		const { properties } = sheetSchema(questions) as never as Schema;
		for (const { id, ask } of questions) {
			const [section, name] = id.split('.') as [string, string];
			expect(properties.answers.properties[section]?.properties[name]?.description).toBe(textIn(ask, 'us'));
		}
	});

	test.each([
		['an unknown section', changed(({ answers }) => (answers.paint = {}))],
		['an unknown answer', answered('engine.colour', { value: 1 })],
		['neither value nor not known', answered('engine.bore', {})],
		['both', answered('engine.bore', { value: 4, unit: 'in', known: 'not-known' })],
		['no unit', answered('engine.bore', { value: 4 })],
		['text for a number', answered('engine.bore', { value: '4', unit: 'in' })],
		['an unknown choice', answered('boost.kind', { value: 'nitrous' })],
		['an unknown way of knowing', answered('engine.bore', { value: 4, unit: 'in', known: 'surely' })],
		['a circuit without a state', answered('harness.circuits', { value: [{ circuit: 'x' }] })],
		['a curve of one point', answered('sensors.meter_curve', { value: [[1, 2]], unit: ['V', 'kg/h'] })],
		['unknown units', changed(sheet => (sheet.units = 'imperial'))],
	])('refuses %s, as the checks do', (_, text) => {
		expect(fits(JSON.parse(text))).toBe(false);
		expect(problemsOf(text)).not.toEqual([]);
	});

	test.each([
		['a unit beside not known', answered('engine.bore', { known: 'not-known', unit: 'in' })],
		['a bare ratio', answered('boost.lambda', { value: 0.8 })],
		['a key that is not ours', changed(sheet => (sheet.mine = 1))],
	])('takes %s, as the checks do', (_, text) => {
		expect(fits(JSON.parse(text))).toBe(true);
		expect(problemsOf(text)).toEqual([]);
	});
});

interface Schema {
	readonly properties: { readonly answers: { readonly properties: Record<string, Section> } };
}
interface Section {
	readonly properties: Record<string, { readonly description: string }>;
}
