import { describe, expect, test } from 'vitest';
import { writeProblem } from '../../../src/rulebook/compile/source.ts';
import { accesses } from '../../../src/sheet/access.ts';
import { compileRules, ruleTexts, testModel } from '../../support/model.ts';
import { expectRefused, gap } from './refused.ts';

const { rules, questions, parts } = testModel().rulebook;
const path = 'ignition/gap.yaml';

/** The problems of rules/ with one file changed. */
function problemsWith(file: string, change: (text: string) => string): string[] {
	const files = ruleTexts().map(({ path: own, text }) => ({ path: own, text: own === file ? change(text) : text }));
	return compileRules(files).problems.map(writeProblem);
}

describe('where work is and what it takes', () => {
	test('every rule and every question says so', () => {
		for (const { id, access, minutes } of [...rules, ...questions]) {
			expect(accesses, id).toContain(access);
			expect(minutes, id).toBeGreaterThan(0);
		}
	});

	test('what the head of a file says goes for all its rules, unless they say otherwise', () => {
		const hose = (id: string) => rules.find(rule => rule.id === `fuel.${id}`)!;
		expect(hose('worm-clamps')).toMatchObject({ access: 'rail', minutes: 60 });
		expect(hose('no-extinguisher')).toMatchObject({ access: 'bay', minutes: 15 });
	});

	test('what a file opens does not go for a rule that is done elsewhere', () => {
		const head = (id: string) => rules.find(rule => rule.id === `engine.${id}`)!;
		expect(head('gasket-inside-bore').opens).toEqual(['rail']);
		expect(head('ratio-disagrees').opens).toEqual([]);
	});

	test('one compilation with many faults names each with its place', { timeout: 60_000 }, () => {
		const problems = problemsWith(path, text =>
			text
				.replace(/^access: .*\n/m, '')
				.replace(/^minutes: .*$/m, 'minutes: 0')
				.replace(
					'    harm: engine',
					'    harm: engine\n    needs: [fuel.no-such, ignition.plugs-too-cold]\n    opens: [roof]',
				)
				.replace(/parts: \[[^\]]*\]/, 'parts: [unobtainium]'),
		);
		expectRefused(problems, path, /access: say where this work is, here or at the head of the file: bench, bay/);
		expectRefused(problems, path, /access: say where this is found out/);
		expectRefused(problems, path, /minutes: a whole number is needed here, 1 to 2400/);
		expectRefused(problems, path, /needs: "fuel.no-such" is neither a rule nor a circuit/);
		expectRefused(problems, path, /needs: "ignition.plugs-too-cold" is settled before stage tidy only/);
		expectRefused(problems, path, /opens: "roof" is not one of bench, bay/);
		expectRefused(problems, path, /parts: "unobtainium" is not in rules\/parts.yaml: add it there/);
	});

	test('rules that need each other are refused', { timeout: 60_000 }, () => {
		const problems = problemsWith('fuel/hose.yaml', text =>
			text.replace(
				'access: bay\n    minutes: 15',
				'needs: [fuel.leak-test-not-done]\n    access: bay\n    minutes: 15',
			),
		);
		expectRefused(problems, 'fuel/hose.yaml', /needs: "fuel.leak-test-not-done" itself needs fuel.no-extinguisher/);
	});

	test('a pack that says nothing falls back, and may name parts of its own', () => {
		const { problems, rulebook } = gap.compile(
			gap.text.replace(/^(access|minutes): .*\n/gm, '').replace(/parts: \[[^\]]*\]/, 'parts: [a gap tool]'),
		);
		expect(problems).toEqual([]);
		expect(rulebook.rules.find(({ id }) => id === 'ignition.gap-too-wide')).toMatchObject({
			access: 'bay',
			minutes: 30,
			parts: ['a gap tool'],
		});
	});
});

describe('the parts', () => {
	test('each is asked for by some rule, and no two have one title', () => {
		const asked = new Set(rules.flatMap(rule => rule.parts));
		for (const { id } of parts) expect(asked, id).toContain(id);
		expect(new Set(parts.map(({ title }) => title)).size).toBe(parts.length);
	});
});
