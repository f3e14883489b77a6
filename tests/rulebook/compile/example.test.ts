import { describe, test } from 'vitest';
import { oneTopic } from '../../support/one-topic.ts';
import { type Change, expectRefusedTopic, swap } from './refused.ts';

/** A topic with a rule on each of several straps. */
const straps = oneTopic('harness/grounds.yaml');

describe('examples are gated', () => {
	test.each<[string, Change, RegExp]>([
		[
			'none that fails',
			text => text.replaceAll('then: fails', 'then: holds'),
			/no example of this rule comes out as fails/,
		],
		[
			'none that holds',
			text => text.replaceAll('then: holds', 'then: fails'),
			/no example of this rule comes out as holds/,
		],
		[
			'none that cannot be judged',
			text => text.replace(/^.*then: cannot-tell.*\n/gm, ''),
			/no example of this rule comes out as cannot-tell: each needs/,
		],
		[
			'an outcome that is none',
			swap('then: fails', 'then: explodes'),
			/"explodes" is not one of fails, holds, cannot-tell/,
		],
		[
			'a build that is none',
			swap('{on: boosted,', '{on: rocket,'),
			/"rocket" is no build of rules\/examples: boosted, unboosted/,
		],
		[
			'a name that is none',
			swap('{ignition.gap: 0.054 in}', '{ignition.gapp: 0.054 in}'),
			/"ignition\.gapp" is no answer and no quantity/,
		],
		[
			'an answer without its unit',
			swap('{ignition.gap: 0.054 in}', '{ignition.gap: 0.054}'),
			/a unit is needed of length/,
		],
		[
			'an answer out of its hard range',
			swap('{ignition.gap: 0.054 in}', '{ignition.gap: 3 in}'),
			/ignition\.gap: found 3 in; accepted: 0\.005 to 0\.12 in/,
		],
		[
			'a choice that is none',
			swap('boost.kind: supercharger', 'boost.kind: laughing-gas'),
			/boost\.kind: found "laughing-gas"; accepted: one of none/,
		],
		[
			'a yes or no that is none',
			swap('{ignition.gap: 0.054 in}', '{ignition.points_disagree: 3}'),
			/ignition\.points_disagree: true or false is needed here/,
		],
		[
			'a list that is none',
			swap('{ignition.gap: 0.054 in}', '{ignition.companions: 3}'),
			/ignition\.companions: a list is needed here/,
		],
		['a hidden quantity', swap('{ignition.gap: 0.054 in}', '{engine.cylinder: 3}'), /this quantity cannot be set/],
		[
			'missing where it can be judged',
			swap('then: fails}', 'then: fails, missing: [ignition.gap]}'),
			/missing: it goes with then: cannot-tell/,
		],
		[
			'missing what is no answer',
			swap('missing: [ignition.gap]', 'missing: [ignition.spark_margin]'),
			/missing: "ignition\.spark_margin" is no answer/,
		],
		['without what is no answer', swap('without: [ignition.gap]', 'without: [sun]'), /without: "sun" is no answer/],
		[
			'an item on a rule of the whole build',
			swap('{on: boosted, then: holds}', '{on: boosted, item: heads, then: holds}'),
			/item: this rule is on the build as a whole/,
		],
	])('%s', (_, change, message) => {
		expectRefusedTopic(change, message);
	});

	test.each<[string, Change, RegExp]>([
		['a part that is not named', swap(/item: [a-z-]+, /, ''), /item: which part of harness\.grounds/],
		['a part that is none', swap(/item: [a-z-]+, /, 'item: roof, '), /"roof" is none of the parts/],
		['a subject that is no choice', swap(/only: \[/, 'only: [roof, '), /"roof" is not one of its choices/],
	])('%s', (_, change, message) => {
		expectRefusedTopic(change, message, straps);
	});
});
