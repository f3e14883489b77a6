import { expect, test } from 'vitest';
import { partsFor } from '../../src/audit/parts.ts';
import { audited, brokenBuild } from '../support/audited.ts';
import { testModel } from '../support/model.ts';

const { rulebook } = testModel();
const [some] = audited(brokenBuild()).audit.findings;

/** What a list of lines needs: findings that ask for these parts. */
function needed(...parts: readonly (readonly string[])[]): string[] {
	const rules = parts.map((own, index) => ({ ...rulebook.rules[0]!, id: `build.${index}`, parts: own }));
	const findings = rules.map(({ id }) => ({ ...some!, rule: id, title: id }));
	return partsFor(findings, { rules, parts: rulebook.parts }).map(
		({ words, purposes }) => `${words} (${purposes.join(' ')})`,
	);
}

test('one extinguisher serves all lines', () => {
	expect(needed(['extinguisher'], ['extinguisher'], ['extinguisher'])).toEqual([
		'a class B fire extinguisher (build.0 build.1 build.2)',
	]);
});

test('what each line needs for itself is counted', () => {
	expect(needed(['relay'], ['relay', 'wire'])).toEqual([
		'2 relays with sockets (build.0 build.1)',
		'wire of the gauge that its line names (build.1)',
	]);
});

test('what another part covers is not bought beside it, and its purpose is kept', () => {
	expect(needed(['fuel-pressure-gauge'], ['pressure-gauge-on-a-long-hose'])).toEqual([
		'a fuel pressure gauge on a long hose outside the car, or a sensor (build.1 build.0)',
	]);
});

test('a part that a pack names in words stays as it is', () => {
	expect(needed(['a gap tool'])).toEqual(['a gap tool (build.0)']);
});
