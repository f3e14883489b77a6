import { describe, expect, test } from 'vitest';
import { Wording } from '../../src/wording/template.ts';
import { testModel } from '../support/model.ts';

const { rulebook, quantities } = testModel();
const us = new Wording(rulebook.questions, quantities, 'us');
const metric = new Wording(rulebook.questions, quantities, 'metric');

const read = (values: Record<string, number | string>) => (name: string) => values[name];

describe('words with numbers', () => {
	test('are written in the unit set asked for', () => {
		const values = read({ 'boost.target': 68947.57 });
		expect(us.fill('At {boost.target} of boost.', values)).toBe('At 10 psi of boost.');
		expect(metric.fill('At {boost.target} of boost.', values)).toBe('At 0.69 bar of boost.');
	});

	test('leave out a sentence that needs what is not known, and keep the rest', () => {
		expect(us.fill('It stands at {boost.target}. Close the gap. {ignition.gap} is too wide.', read({}))).toBe(
			'Close the gap.',
		);
	});

	test('do not take a decimal point for the end of a sentence', () => {
		expect(us.fill('Set 0.030 in at {ignition.gap} or less.', read({ 'ignition.gap': 0.000762 }))).toBe(
			'Set 0.030 in at 0.030 in or less.',
		);
	});

	test('write choices in their own words', () => {
		const shown = us.fill('{engine.head_fasteners}', read({ 'engine.head_fasteners': 'stretch-reused' }));
		expect(shown).toBe(rulebook.questions.find(({ id }) => id === 'engine.head_fasteners')!.choices['stretch-reused']);
	});

	test('write shares as per cent', () => {
		expect(us.show('injectors.duty', 0.8534)).toBe('85.3 %');
	});
});
