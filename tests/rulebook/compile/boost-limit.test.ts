import { expect, test } from 'vitest';
import { writeProblem } from '../../../src/rulebook/compile/source.ts';
import { compileRules, ruleTexts } from '../../support/model.ts';
import { expectRefused } from './refused.ts';

/** A line of a file of rules/, and what is put in its place. */
const spoilt: Readonly<Record<string, readonly [line: string, by: string]>> = {
	'fuel/pump.yaml': ['    limit: [fuel.pump_spare_boost_limit]\n', ''],
	'boost/compressor.yaml': ['    limit: [boost.compressor_boost_limit]\n', '    limit: [boost.compressor_choke]\n'],
	'injectors/size.yaml': [
		'    limit: [injectors.boost_limit]\n',
		'    limit: [injectors.boost_limit]\n    no_limit: no reason\n',
	],
};

test('a rule on boost that can cost the engine is refused without a limit or a reason, with both, and with no limit by that name', {
	timeout: 60_000,
}, () => {
	const files = ruleTexts().map(({ path, text }) => {
		const [line, by] = spoilt[path] ?? ['', ''];
		expect(text).toContain(line);
		return { path, text: text.replace(line, by) };
	});
	const problems = compileRules(files).problems.map(writeProblem);
	expectRefused(problems, 'fuel/pump.yaml', /name its limit, or say in no_limit why it is none/);
	expectRefused(problems, 'boost/compressor.yaml', /"boost.compressor_choke" is not in rules\/limits.yaml/);
	expectRefused(problems, 'injectors/size.yaml', /no_limit: this rule names its limit already/);
	expect(problems).toHaveLength(3);
});
