import { describe, expect, test } from 'vitest';
import { quantities } from '../../src/quantities/model/all.ts';
import { compileRulebook } from '../../src/rulebook/compile/compile.ts';
import { writeProblem } from '../../src/rulebook/compile/source.ts';
import { ruleTexts } from '../support/model.ts';

const texts = ruleTexts();
const path = 'ignition/gap.yaml';
const good = texts.find(file => file.path === path)!.text;

/** The problems that come of a change to one topic file, as a person sees them. */
function problemsOf(change: (text: string) => string): string[] {
	const changed = change(good);
	expect(changed, 'the change must change something').not.toBe(good);
	const files = texts.map(file => (file.path === path ? { ...file, text: changed } : file));
	return compileRulebook(files, quantities).problems.map(writeProblem);
}

const ruleLine = (key: string) => new RegExp(`^    ${key}: .*$`, 'm');

test('the rules as they are have no problem', () => {
	expect(compileRulebook(texts, quantities).problems).toEqual([]);
});

describe('a rule file with a fault is refused with its place, the line, and what would be taken', () => {
	test.each([
		[
			'an unknown name',
			(text: string) => text.replace(ruleLine('holds'), '    holds: ignition.gapp >= spare'),
			/"ignition\.gapp" is no answer, no quantity/,
		],
		[
			'a wrong kind',
			(text: string) => text.replace(ruleLine('holds'), '    holds: ignition.gap >= boost.target'),
			/a length cannot be compared with a pressure/,
		],
		[
			'gauge against absolute',
			(text: string) => text.replace(ruleLine('holds'), '    holds: boost.target < boost.manifold_pressure'),
			/cannot be compared/,
		],
		[
			'a dimension against a bare number',
			(text: string) => text.replace(ruleLine('holds'), '    holds: ignition.gap >= 0.5'),
			/a length cannot be compared with a bare number/,
		],
		[
			'a choice that is none',
			(text: string) => text.replace(ruleLine('holds'), '    holds: boost.kind == "nitrous"'),
			/"nitrous" is not one of the choices none, turbocharger, supercharger/,
		],
		[
			'a banned call',
			(text: string) => text.replace(ruleLine('holds'), '    holds: boost.kind.matches("x")'),
			/not used in rules/,
		],
		[
			'a macro',
			(text: string) => text.replace(ruleLine('holds'), '    holds: engine.history.all(x, x == "y")'),
			/not used in rules/,
		],
		[
			'an index',
			(text: string) => text.replace(ruleLine('holds'), '    holds: engine.compression[0] > 1'),
			/not used in rules/,
		],
		[
			'a prototype',
			(text: string) => text.replace(ruleLine('holds'), '    holds: __proto__.x == 1'),
			/Reserved identifier/,
		],
		[
			'division by an answer',
			(text: string) => text.replace(ruleLine('holds'), '    holds: 1.0 / ignition.spark_margin > 1'),
			/division is by a written decimal/,
		],
		['no expression', (text: string) => text.replace(ruleLine('holds'), '    holds: a >='), /not an expression/],
		[
			'no yes or no',
			(text: string) => text.replace(ruleLine('holds'), '    holds: ignition.spark_margin'),
			/a yes or no is needed/,
		],
		[
			'a stage that is none',
			(text: string) => text.replace(ruleLine('stage'), '    stage: someday'),
			/"someday" is not one of crank, fire, move, boost, tidy/,
		],
		[
			'a caution that is none',
			(text: string) => text.replace(ruleLine('cautions'), '    cautions: [sharks]'),
			/"sharks" is not in rules\/cautions\.yaml/,
		],
		[
			'a source that is none',
			(text: string) => text.replace(ruleLine('source'), '    source: [hearsay]'),
			/"hearsay" is not in rules\/sources\.yaml/,
		],
		[
			'a field that is none',
			(text: string) => text.replace(ruleLine('stage'), '    stage: boost\n    colour: red'),
			/"colour" is not a field here/,
		],
		[
			'a word that names nothing',
			(text: string) => text.replace(ruleLine('prove'), '    prove: Look at {ignition.sparkle}.'),
			/\{ignition\.sparkle\}/,
		],
		[
			'two rules of one id',
			(text: string) => `${text}\n${text.slice(text.indexOf('  - id: ', text.indexOf('rules:')))}`,
			/is already at/,
		],
		['YAML that is none', (text: string) => `${text}\n\t- :`, /./],
		['an alias', (text: string) => text.replace(/^place: .*$/m, 'place: &x 30\nother: *x'), /aliases .* are not used/],
	] as const)('%s', (_, change, message) => {
		const problems = problemsOf(change);
		expect(problems.join('\n')).toMatch(message);
		expect(problems[0]).toMatch(/^ignition\/gap\.yaml:\d+:\d+: .*\n +\d+ \| /);
	});
});

test('all problems are told in one go', () => {
	const problems = problemsOf(text =>
		text.replace(ruleLine('stage'), '    stage: someday').replace(ruleLine('harm'), '    harm: everything'),
	);
	expect(problems.length).toBe(2);
});
