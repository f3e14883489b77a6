import { describe, expect, test } from 'vitest';
import { writeProblem } from '../../../src/rulebook/compile/source.ts';
import { compileRules, ruleTexts } from '../../support/model.ts';
import { type Change, expectRefused, gap, set, swap } from './refused.ts';

const texts = ruleTexts();

test('the rules as they are have no problem', () => {
	expect(compileRules(texts).problems).toEqual([]);
});

/** The problems of all of rules/ with one file changed, or left out. */
function problemsOf(path: string, change: (text: string) => string | null): string[] {
	const files = texts.flatMap(file => {
		if (file.path !== path) return [file];
		const text = change(file.text);
		expect(text, 'the change must change something').not.toBe(file.text);
		return text === null ? [] : [{ path, text }];
	});
	return compileRules(files).problems.map(writeProblem);
}

/** Faults that hide nothing of each other: put into the files all at once, each is reported. */
const faults: readonly [string, string, Change, RegExp][] = [
	[
		'a limit has no words',
		'limits.yaml',
		swap(/^ {2}engine\.knock_boost_limit:\n.*\n.*\n/m, ''),
		/the limit engine\.knock_boost_limit has no words/,
	],
	[
		'words are for no limit',
		'limits.yaml',
		swap('ignition.boost_limit:', 'ignition.moon_limit:'),
		/"ignition\.moon_limit" is no limit/,
	],
	[
		'the words of a limit have a name in braces',
		'limits.yaml',
		swap('raise: Larger', 'raise: Than {boost.target} larger'),
		/"\{boost\.target\}" is not filled in here/,
	],
	[
		'a check by distance hangs on a rule that is due at no distance',
		'intervals.yaml',
		swap('build.first-hour-check-due', 'fuel.worm-clamps'),
		/"fuel\.worm-clamps" is no rule with a threshold due that is a distance/,
	],
	[
		'a check that comes round goes by a figure that is no distance',
		'intervals.yaml',
		swap('build.next_check_in', 'engine.power'),
		/"engine\.power" is no answer and no quantity that is a distance/,
	],
	[
		'a code does what no action says',
		'trouble-codes.yaml',
		swap('do: signals-apart', 'do: wish'),
		/do: "wish" is none of the actions/,
	],
	[
		'an action that no code has',
		'trouble-codes.yaml',
		swap('actions:\n', 'actions:\n  pray: Light a candle.\n'),
		/no code does "pray"/,
	],
	[
		"a quantity's source is not listed",
		'sources.yaml',
		swap(/^ {2}naidu: .*\n/m, ''),
		/names the source "naidu", which is not here/,
	],
	[
		'a caution is gone',
		'cautions.yaml',
		swap(/^ {2}ignition-voltage:/m, '  ignition-volts:'),
		/"ignition-voltage" is not in rules\/cautions/,
	],
	[
		'a circuit takes its load from a length',
		'circuits.yaml',
		swap('load: fuel.pump_current', 'load: fuel.pump_wire_length'),
		/load: "fuel.pump_wire_length" is no answer in current/,
	],
	[
		'a circuit is there twice',
		'circuits.yaml',
		swap('circuit: keep-alive feed', 'circuit: controller ground'),
		/circuit: "controller ground" is here already/,
	],
	[
		'two sorts of circuit that nothing says anything of',
		'meetings.yaml',
		swap('pairs: [battery + power-ground]', 'pairs: [battery + battery]'),
		/nothing says what happens when battery meets power-ground/,
	],
	[
		'a pair of sorts is there twice',
		'meetings.yaml',
		swap('pairs: [switched + power-ground]', 'pairs: [switched + power-ground, power-ground + switched]'),
		/"power-ground \+ switched" is here already/,
	],
	[
		'a circuit of a sort that is none',
		'circuits.yaml',
		swap('sort: battery', 'sort: dynamo'),
		/sort: "dynamo" is not one of battery/,
	],
	[
		'a circuit is twisted with none',
		'circuits.yaml',
		swap('twisted_with: crank-minus', 'twisted_with: crank-zero'),
		/twisted_with "crank-zero" is no circuit/,
	],
	[
		'an unclear name stands for none',
		'circuits.yaml',
		swap('circuits: [pump-feed, pump-relay-trigger', 'circuits: [pump-fed, pump-relay-trigger'),
		/"pump-fed" is no circuit/,
	],
	[
		'a circuit whose need is no yes or no',
		'circuits.yaml',
		swap('required: "true"', 'required: "1"'),
		/required: a yes or no is needed here/,
	],
	[
		'a code points to a rule that is none',
		'trouble-codes.yaml',
		swap('sensors.crank-teeth-differ', 'sensors.crank-tooth'),
		/"sensors\.crank-tooth" is none of the rules/,
	],
	[
		'a code points to a topic that is none',
		'trouble-codes.yaml',
		swap('[cam sensor,', '[cam lobe,'),
		/"cam lobe" is none of the topics/,
	],
	['a code is none', 'trouble-codes.yaml', swap('P0016:', 'P16:'), /"P16" is no trouble code/],
	['a section is there twice', 'sections.yaml', swap('id: cooling', 'id: engine'), /id: "engine" is here already/],
	[
		'a topic is there twice',
		'ignition/plugs.yaml',
		swap(/^topic: .*$/m, 'topic: spark gap'),
		/the topic "spark gap" is already in/,
	],
	[
		'a build answers what is no answer',
		'examples/boosted/ignition.yaml',
		text => `${text}\nignition.colour: red\n`,
		/"ignition\.colour" is no answer/,
	],
	[
		'a build answers out of range',
		'examples/boosted/ignition.yaml',
		swap(/^ignition\.gap: .*$/m, 'ignition.gap: 3 in'),
		/ignition\.gap: found 3 in; accepted/,
	],
	[
		'a procedure names a caution that is none',
		'procedures/first-fire.yaml',
		swap(/cautions: \[/, 'cautions: [sharks, '),
		/"sharks" is not in rules\/cautions/,
	],
	[
		'a procedure names a number that is none',
		'procedures/first-fire.yaml',
		swap(/do: (?=[A-Z])/, 'do: At {moon.phase}. '),
		/"\{moon\.phase\}" is no answer/,
	],
];

describe('the files agree with each other', () => {
	const spoilt = faults.reduce((files, [name, path, change]) => {
		return files.map(file => {
			if (file.path !== path) return file;
			const text = change(file.text);
			expect(text, `${name}: the change must change something`).not.toBe(file.text);
			return { path, text };
		});
	}, texts);
	const found = compileRules(spoilt).problems.map(writeProblem);

	test.each(faults)('%s', (_, path, __, message) => {
		const where = path.includes('/') ? path : found.find(problem => message.test(problem))!.split(':')[0]!;
		expectRefused(found, where, message);
	});

	test('a table is missing', () => {
		expectRefused(
			problemsOf('limits.yaml', () => null),
			'limits.yaml',
			/this file is missing/,
		);
	});

	test('a folder is no section', () => {
		const strange = { path: 'wheels/tyres.yaml', text: 'topic: tyres\nplace: 1\n' };
		const written = compileRules([...texts, strange]).problems.map(writeProblem);
		expectRefused(written, 'wheels/tyres.yaml', /the folder "wheels" is no section/);
	});

	test('a question that a quantity reads is gone', () => {
		const written = problemsOf(
			'engine/size.yaml',
			swap(/^ {2}- id: engine\.bore\n[\s\S]*?(?=^ {2}- id: |^rules:)/m, ''),
		);
		expect(written.join('\n')).toMatch(/"engine\.bore" is no answer/);
	});
});

test('all problems are reported in one go', () => {
	const changed = set('stage', 'someday')(set('harm', 'everything')(gap.text));
	expect(gap.compile(changed).problems.length).toBe(2);
});

test('of a file that cannot be read nothing else is reported: what it holds would be missed everywhere', () => {
	const written = problemsOf('engine/identity.yaml', text => `${text}\n  - [\n`);
	expect(written.length).toBeGreaterThan(0);
	expect(written.filter(problem => !problem.startsWith('engine/identity.yaml:'))).toEqual([]);
});

test('a kind that is none is reported once, and not all that hangs on it', () => {
	const change = (text: string) => text.replace('kind: length', 'kind: lenght');
	expect(problemsOf('ignition/gap.yaml', change).map(problem => problem.split('\n')[0])).toEqual([
		expect.stringMatching(/^ignition\/gap\.yaml:\d+:\d+: kind: "lenght" is not one of /),
	]);
	expect(gap.compile(change(gap.text)).problems.length).toBe(1);
});

test('of a file full of faults the first hundred are reported', () => {
	const { problems } = gap.compile(
		`topic: x\nplace: 1\n${Array.from({ length: 500 }, (_, i) => `x${i}: 1\n`).join('')}`,
	);
	expect(problems.length).toBe(100);
	expect(problems.at(-1)!.message).toContain('fix these first');
});
