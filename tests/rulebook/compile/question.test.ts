import { describe, test } from 'vitest';
import { type Change, expectRefusedTopic, swap } from './refused.ts';

describe('questions are gated', () => {
	test.each<[string, Change, RegExp]>([
		['an id that is none', swap('id: ignition.gap\n', 'id: ignition-gap\n'), /is not an id: section\.answer/],
		[
			'an id that a question has',
			swap('id: ignition.gap\n', 'id: engine.bore\n'),
			/"engine\.bore" is already a question/,
		],
		[
			'an id that a quantity has',
			swap('id: ignition.gap\n', 'id: engine.power\n'),
			/"engine\.power" is already a quantity/,
		],
		[
			'a kind that is none',
			swap('kind: length', 'kind: elvish'),
			/kind: "elvish" is not one of length, distance, area/,
		],
		['a kind from the prototype', swap('kind: length', 'kind: constructor'), /kind: "constructor" is not one of/],
		[
			'a kind of readings from the prototype',
			swap('kind: length', 'kind: per-cylinder\n    of: constructor'),
			/of: a kind is needed here/,
		],
		['a unit of another kind', swap('{us: in,', '{us: psi,'), /"psi" is no unit of length/],
		[
			'a range that falls',
			swap('plausible: [0.015 in, 0.070 in]', 'plausible: [0.070 in, 0.015 in]'),
			/two rising numbers/,
		],
		[
			'a plausible range beyond the hard one',
			swap('plausible: [0.015 in,', 'plausible: [0.001 in,'),
			/reaches beyond hard/,
		],
		['a target that is not said by true', swap(/^( {4}hard: .*\n)/m, '$1    target: no\n'), /target: .*accepted: true/],
		['no hard range', swap(/^ {4}hard: .*\n/m, ''), /hard: a list of texts is needed here/],
		['no word how to find out', swap(/^ {4}how: [\s\S]*?(?=^ {4}kind)/m, ''), /how: a text is needed here/],
		[
			'a way to find out a choice that is none',
			swap(
				'kind: length',
				'kind: several\n    choices: {one: one, two: two}\n    how_each: {one: Look., three: Look.}',
			),
			/"three" is not one of the choices/,
		],
		[
			'a choice without the way that the others have',
			swap('kind: length', 'kind: several\n    choices: {one: one, two: two}\n    how_each: {one: Look.}'),
			/two: a text is needed here/,
		],
		['one choice', swap('kind: length', 'kind: choice\n    choices: {one: one}'), /two choices or more are needed/],
		[
			'a choice from the prototype',
			swap('kind: length', 'kind: choice\n    choices: {__proto__: one, two: two}'),
			/no choice's id/,
		],
		[
			'asked when nothing decides',
			swap('pass: quick', 'pass: quick\n    ask_when: engine.nothing'),
			/"engine\.nothing" is no answer/,
		],
		[
			'asked when itself is answered',
			swap('pass: quick', 'pass: quick\n    ask_when: ignition.gap_limit > ignition.gap'),
			/a circle: .*ignition\.gap/,
		],
		[
			'a usual value of another kind',
			swap('pass: quick', 'pass: quick\n    usual: {value: 3 psi}'),
			/"psi" is no unit of length/,
		],
		[
			'a usual value that is computed of another kind',
			swap('pass: quick', 'pass: quick\n    usual: {value: 2 * engine.torque}'),
			/a length is needed here/,
		],
		[
			'a spread below nothing',
			swap('pass: quick', 'pass: quick\n    usual: {value: 1 mm, spread: -1 mm}'),
			/a spread is a difference, 0 or more/,
		],
		[
			'a density that is none',
			swap('pass: quick', 'pass: quick\n    takes: {kind: mass-flow, at: engine.bore}'),
			/"engine\.bore" is no density/,
		],
		[
			'a caution that is none',
			swap('pass: quick', 'pass: quick\n    cautions: [sharks]'),
			/"sharks" is not in rules\/cautions/,
		],
		[
			'a question nobody reads',
			swap(
				'questions:\n',
				'questions:\n  - {id: ignition.colour, ask: What colour?, how: Look at it., kind: choice, choices: {red: red, blue: blue}, pass: full}\n',
			),
			/no rule and no quantity reads ignition\.colour/,
		],
		[
			'a usual value of a list',
			swap('kind: length', 'kind: per-cylinder\n    of: length\n    usual: {value: 1 mm}'),
			/a usual value makes no sense for per-cylinder/,
		],
	])('%s', (_, change, message) => {
		expectRefusedTopic(change, message);
	});
});
