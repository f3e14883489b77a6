import { expect, test } from 'vitest';
import { withoutAnswer } from '../../src/build/check-builds.ts';
import { ruleTexts, testModel } from '../support/model.ts';

test('a named build that leaves open what it is asked is named with the place for the answer; what it is not asked is left out', () => {
	const model = testModel();
	const { builds } = model.rulebook;
	expect(withoutAnswer(model, ruleTexts())).toEqual([]);

	const { 'fuel.octane': _octane, ...rest } = builds.unboosted!;
	const open = { ...model, rulebook: { ...model.rulebook, builds: { ...builds, unboosted: rest } } };
	expect(builds.unboosted).not.toHaveProperty(['boost.full_rpm']);
	expect(withoutAnswer(open, ruleTexts())).toEqual([
		expect.stringMatching(/^examples\/unboosted\/fuel\.yaml:\d+:1 fuel\.octane: this build is asked it/),
	]);
});
