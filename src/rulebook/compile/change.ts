import type { Rule } from '../rulebook.ts';
import { readExamples } from './example.ts';
import { type Fields, quote } from './fields.ts';
import { checkRule, namesOfRule, type RuleNames } from './rule.ts';
import { readThresholds } from './threshold.ts';

/** What a pack may say anew of a rule. */
const changeable = ['thresholds', 'title', 'why', 'do', 'prove', 'parts', 'examples'];

/** A rule with the words and thresholds that a pack sets anew; nothing else of it can be changed. */
export function changeRule(fields: Fields, rule: Rule, known: RuleNames): Rule {
	for (const key of fields.keys()) {
		if (key !== 'rule' && !changeable.includes(key))
			fields.reportName(key, `a pack cannot change ${quote(key)} of a rule; it can change ${changeable.join(', ')}`);
	}
	const own = readThresholds(fields, known.names);
	for (const [name, { kind }] of Object.entries(own)) {
		const before = Object.hasOwn(rule.thresholds, name) ? rule.thresholds[name] : undefined;
		const have = Object.keys(rule.thresholds).join(', ') || 'none';
		if (!before) fields.report('thresholds', `${quote(name)} is no threshold of ${rule.id}, which has ${have}`);
		else if (before.kind !== kind)
			fields.report('thresholds', `the threshold ${quote(name)} is a ${before.kind}, this is a ${kind}`);
	}
	// A threshold moved leaves the old examples on its wrong side.
	if (Object.keys(own).length > 0 && !fields.has('examples'))
		fields.report('thresholds', 'a changed threshold needs examples of its own beside it: fails, holds, cannot-tell');
	const text = (key: 'title' | 'why' | 'prove') => (fields.has(key) ? fields.text(key) : rule[key]);
	const list = (key: 'do' | 'parts') => (fields.has(key) ? fields.texts(key) : rule[key]);
	const changed: Rule = {
		...rule,
		thresholds: { ...rule.thresholds, ...own },
		title: text('title'),
		why: text('why'),
		prove: text('prove'),
		do: list('do'),
		parts: list('parts'),
		examples: fields.has('examples') ? readExamples(fields, rule.each, known) : rule.examples,
	};
	checkRule(fields, changed, namesOfRule(changed, known.names, known.questions));
	return changed;
}
