import { describe, expect, test } from 'vitest';
import { type Change, expectRefusedTopic, gap, set, swap } from './refused.ts';

describe('a topic file with a fault is refused with its place, the line, and what would be taken', () => {
	test.each<[string, Change, RegExp]>([
		['an unknown name', set('holds', 'ignition.gapp >= spare'), /"ignition\.gapp" is no answer, no quantity/],
		['a wrong kind', set('holds', 'ignition.gap >= boost.target'), /a length cannot be compared with a pressure/],
		['gauge against absolute', set('holds', 'boost.target < boost.manifold_pressure'), /cannot be compared/],
		[
			'a dimension against a bare number',
			set('holds', 'ignition.gap >= 0.5'),
			/a length cannot be compared with a bare/,
		],
		[
			'a choice that is none',
			set('holds', 'boost.kind == "nitrous"'),
			/"nitrous" is not one of the choices none, turbo/,
		],
		[
			'choices of two questions that have none in common',
			set('holds', 'boost.kind == fuel.hose'),
			/is not one of the choices/,
		],
		[
			'two fields that are not there, and a stage that is none beside them',
			text => set('stage', 'later')(text).replace(/^ {4}(?:title|prove): .*\n/gm, ''),
			/title and prove are needed here/,
		],
		['a banned call', set('holds', 'boost.kind.matches("x")'), /not used in rules/],
		['a macro', set('holds', 'engine.history.all(x, x == "y")'), /not used in rules/],
		['an index', set('holds', 'engine.compression[0] > 1'), /not used in rules/],
		['a name with three parts', set('holds', 'engine.history.size > 1'), /a name has two parts/],
		['a prototype', set('holds', '__proto__.x == 1'), /Reserved identifier/],
		['a constructor', set('holds', 'constructor.constructor == 1'), /is no answer, no quantity/],
		['division by an answer', set('holds', '1.0 / ignition.spark_margin > 1'), /division is by a written decimal/],
		[
			'division by nothing',
			set('holds', 'ignition.spark_margin / 0.0 > 1'),
			/division is by a written decimal other than 0/,
		],
		['a sum of unlike kinds', set('holds', 'ignition.gap + boost.target > ignition.gap'), /has no meaning here/],
		[
			'sides of two kinds',
			set('holds', "'(true ? ignition.gap : boost.target) > ignition.gap'"),
			/both sides of \?: must be alike/,
		],
		['order of texts', set('holds', 'boost.kind < "none"'), /< compares numbers, not a choice/],
		['a list that holds numbers', set('holds', 'boost.kind in [1, 2]'), /a list holds texts only/],
		['an expression that breaks off', set('holds', 'a >='), /not an expression: .* \(it ends too early\)/],
		['a single equals sign', set('holds', 'boost.kind = "none"'), /not an expression: .* \(compare with ==\)/],
		['a single and', set('holds', 'true & true'), /not an expression: .* \(and is &&/],
		['a unit in an expression', set('holds', 'ignition.gap <= 3 mm'), /a figure with its unit goes under thresholds/],
		[
			'an endless expression',
			set('holds', `${'(ignition.gap > ignition.gap_limit) && '.repeat(40)}true`),
			/at most 1000 characters/,
		],
		[
			'an expression over two lines',
			set('holds', '>-\n      ignition.spark_margin\n      >= spare'),
			/stands on one line/,
		],
		['no yes or no', set('holds', 'ignition.spark_margin'), /a yes or no is needed here, this is a bare number/],
		[
			'a stage that is none',
			set('stage', 'someday'),
			/"someday" is not one of install, crank, fire, move, boost, tidy/,
		],
		['a harm that is none', set('harm', 'slight'), /"slight" is not one of person, engine, strands, wear, annoys/],
		['a caution that is none', set('cautions', '[sharks]'), /"sharks" is not in rules\/cautions\.yaml: petrol/],
		['a source that is none', set('source', '[hearsay]'), /"hearsay" is not in rules\/sources\.yaml: practice/],
		['no source', set('source', '[]'), /source: a list of texts is needed/],
		['a field that is none', set('stage', 'boost\n    colour: red'), /"colour" is not a field here; fields are id,/],
		[
			'a word that names nothing',
			set('prove', 'Look at {ignition.sparkle}.'),
			/prove: "\{ignition\.sparkle\}" is no answer/,
		],
		['a rule id with capitals', swap('ignition.gap-too-wide', 'ignition.Gap'), /is not a rule id: section\.words/],
		['a rule of no section', swap('ignition.gap-too-wide', 'spark.gap-too-wide'), /"spark" is no section/],
		['two rules of one id', swap('ignition.spark-out-below-spring', 'ignition.gap-too-wide'), /is already a rule/],
		['a rule id that another topic has', swap('ignition.gap-too-wide', 'ignition.wire-bare-core'), /is already a rule/],
		[
			'a threshold nobody uses',
			swap('{spare: 5 %,', '{spare: 5 %, lost: 3 %,'),
			/the threshold "lost" is used nowhere/,
		],
		['a threshold with a unit that is none', swap('spare: 5 %', 'spare: 5 parsecs'), /"parsecs" is no unit/],
		[
			'a threshold with the name of a part',
			swap('{spare: 5 %,', '{spare: 5 %, item: 3 %,'),
			/"item" is not a threshold's name/,
		],
		[
			'each of an answer without parts',
			set('applies', 'true\n    each: ignition.gap'),
			/"ignition\.gap" is no answer with several/,
		],
		['only without each', set('applies', 'true\n    only: [a]'), /only: it goes with each/],
		['another call', set('holds', 'min(1, 2) > 0'), /"min" is not called in rules; only size\(list\) is/],
		['the size of a text', set('holds', 'size(boost.kind) > 0'), /a list is needed here, this is a choice or text/],
		['bytes', set('holds', 'b"x" == "x"'), /only texts, finite numbers, true and false/],
		['parts that are a mapping', set('parts', '{a: b}'), /parts: a list of texts is needed/],
		['thresholds that are none', set('thresholds', '5'), /thresholds: a mapping \(name: value\) is needed/],
		['a rule that is a word', swap('rules:\n', 'rules:\n  - word\n'), /rules: each item is a mapping/],
		['rules that are a word', swap(/^rules:[\s\S]*/m, 'rules: none\n'), /rules: a list is needed here/],
		['a place that is no number', swap(/^place: .*$/m, 'place: soon'), /place: a number is needed here/],
		['a field without its text', set('prove', ''), /prove: a text is needed here/],
	])('%s', (_, change, message) => {
		expectRefusedTopic(change, message);
	});
});

test('the mark stands under the first letter of the fault', () => {
	const { problems } = gap.compile(set('holds', 'ignition.spark_margin >= ignition.spar')(gap.text));
	const [line, mark] = problems[0]!.frame.split('\n');
	expect(line!.slice(mark!.indexOf('^'))).toBe('ignition.spar');
});
