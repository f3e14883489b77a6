import { expect, test } from 'vitest';
import { assess } from '../../src/audit/assess.ts';
import { readByLogs } from '../../src/log/car.ts';
import { controllerPlace } from '../../src/plugs/circuit.ts';
import { exampleSheets, runExamples } from '../../src/rulebook/examples.ts';
import { checkSheet } from '../../src/sheet/check.ts';
import { textIn } from '../../src/sheet/text.ts';
import { buildSheet, testModel } from '../support/model.ts';

const { rulebook, graph } = testModel();

test('every example of every rule comes out as it says', () => {
	expect(runExamples(rulebook, graph)).toEqual([]);
});

test('there are 150 rules and 750 examples or more, and five examples a rule', () => {
	const examples = rulebook.rules.reduce((sum, rule) => sum + rule.examples.length, 0);
	expect(rulebook.rules.length).toBeGreaterThanOrEqual(150);
	expect(examples).toBeGreaterThanOrEqual(750);
	expect(examples / rulebook.rules.length).toBeGreaterThan(5);
});

test('every example starts from a sheet that the checks take', () => {
	const sheets = exampleSheets(rulebook);
	for (const rule of rulebook.rules) {
		for (const example of rule.examples)
			expect(() => checkSheet(sheets(example), rulebook.questions), example.at).not.toThrow();
	}
});

test.each(['boosted', 'unboosted'] as const)(
	'the named build %s is healthy: its sheet is taken, and nothing on it fails',
	name => {
		const checked = checkSheet(buildSheet(name), rulebook.questions);
		const { audit } = assess(testModel(), checked, { date: '2026-05-01', units: 'us', tool: 'test', draws: 0 });
		expect(audit.findings.filter(({ verdict }) => verdict === 'fails').map(({ rule }) => rule)).toEqual([]);
	},
);

test('every section has questions and rules, the log rules alone, and every boost limit has its words', () => {
	for (const { id } of rulebook.sections) {
		expect(
			rulebook.questions.some(question => question.id.startsWith(`${id}.`)),
			id,
		).toBe(id !== 'log');
		expect(
			rulebook.rules.some(rule => rule.section === id),
			id,
		).toBe(true);
	}
	const limits = testModel().quantities.filter(quantity => /boost_limit$/.test(quantity.id));
	for (const { id } of limits) expect(Object.hasOwn(rulebook.limits, id), id).toBe(true);
});

test('every question says how to find out, and is read by a rule, a quantity or the plan of a plug', () => {
	const asked = new Set(rulebook.questions.map(({ id }) => id));
	const read = new Set(graph.nodes.filter(({ id }) => !asked.has(id)).flatMap(({ dependencies }) => dependencies));
	const text = JSON.stringify([
		rulebook.rules.map(({ examples: _, ...rule }) => rule),
		rulebook.questions.map(({ askWhen, usual, quick }) => [askWhen, usual, quick]),
		rulebook.vocabulary.circuits.map(({ required }) => required),
	]);
	// The plan of a plug says where the controller sits.
	read.add(controllerPlace);
	for (const id of readByLogs) read.add(id);
	for (const { id, how } of rulebook.questions) {
		expect(textIn(how, 'us').length, id).toBeGreaterThan(40);
		expect(read.has(id) || text.includes(`"${id}"`), id).toBe(true);
	}
});
