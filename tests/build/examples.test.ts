import { expect, test } from 'vitest';
import { withoutAnswers } from '../../src/build/check-examples.ts';
import { testModel } from '../support/model.ts';

const rule = testModel().rulebook.rules.find(({ id }) => id === 'driveline.gearbox-thin-margin')!;

test('a rule whose examples all give quantities is refused, by its place', () => {
	expect(withoutAnswers([rule])).toEqual([]);
	const given = rule.examples.filter(({ quantities }) => Object.keys(quantities).length > 0);
	expect(withoutAnswers([{ ...rule, examples: given }])).toEqual([expect.stringContaining(`${rule.at} ${rule.id}`)]);
});
