import { forBoth, type Text, textIn } from '../../sheet/text.ts';
import type { Rule, Threshold } from '../rulebook.ts';
import { readExamples } from './example.ts';
import { type Fields, quote } from './fields.ts';
import { checkRule, namesOfRule, type RuleNames } from './rule.ts';
import { readThresholds } from './threshold.ts';
import { tighter } from './tighten.ts';
import { readPlain, readText, readTexts } from './words.ts';

/** What a pack may say anew of a rule. */
const changeable = ['thresholds', 'title', 'why', 'do', 'prove', 'parts', 'examples'];

/**
 * A rule with the words and thresholds that a pack sets anew; nothing else of it can be changed. Where people get hurt a
 * threshold can only be tightened, and the pack's words stand beside the rulebook's own.
 */
export function changeRule(fields: Fields, rule: Rule, known: RuleNames, pack: string): Rule {
	for (const key of fields.keys()) {
		if (key !== 'rule' && !changeable.includes(key))
			fields.reportName(key, `a pack cannot change ${quote(key)} of a rule; it can change ${changeable.join(', ')}`);
	}
	const own = readThresholds(fields, known.names);
	for (const [name, threshold] of Object.entries(own)) {
		const { kind } = threshold;
		const before = Object.hasOwn(rule.thresholds, name) ? rule.thresholds[name] : undefined;
		const have = Object.keys(rule.thresholds).join(', ') || 'none';
		if (!before) fields.report('thresholds', `${quote(name)} is no threshold of ${rule.id}, which has ${have}`);
		else if (before.kind !== kind)
			fields.report('thresholds', `the threshold ${quote(name)} is a ${before.kind}, this is a ${kind}`);
		else if (rule.harm === 'person') refuseLooser(fields, rule, name, [before, threshold]);
	}
	// A threshold moved leaves the old examples on its wrong side.
	if (Object.keys(own).length > 0 && !fields.has('examples'))
		fields.report('thresholds', 'a changed threshold needs examples of its own beside it: fails, holds, cannot-tell');
	const adds = rule.harm === 'person';
	const added = (before: Text, said: Text): Text =>
		forBoth(set => `${textIn(before, set)} The pack ${pack} says: ${textIn(said, set)}`);
	const text = (key: 'why' | 'prove'): Text => {
		if (!fields.has(key)) return rule[key];
		const said = readText(fields, key);
		return adds ? added(rule[key], said) : said;
	};
	const title = (): string => {
		if (!fields.has('title')) return rule.title;
		const said = readPlain(fields, 'title');
		return adds ? `${rule.title} (${pack}: ${said})` : said;
	};
	const steps = (): readonly Text[] => {
		if (!fields.has('do')) return rule.do;
		const said = readTexts(fields, 'do');
		const named = (step: Text) => forBoth(set => `The pack ${pack} says: ${textIn(step, set)}`);
		return adds ? [...rule.do, ...said.map(named)] : said;
	};
	const parts = (): readonly string[] => {
		if (!fields.has('parts')) return rule.parts;
		return adds ? [...rule.parts, ...fields.texts('parts')] : fields.texts('parts');
	};
	const changed: Rule = {
		...rule,
		thresholds: { ...rule.thresholds, ...own },
		title: title(),
		why: text('why'),
		prove: text('prove'),
		do: steps(),
		parts: parts(),
		examples: fields.has('examples') ? readExamples(fields, rule.each, known) : rule.examples,
	};
	checkRule(fields, changed, namesOfRule(changed, known.names, known.questions), known.questions);
	return changed;
}

/** Notes a threshold of a rule about people that a pack makes laxer, or of which that cannot be decided. */
function refuseLooser(
	fields: Fields,
	rule: Rule,
	name: string,
	[before, after]: readonly [Threshold, Threshold],
): void {
	const way = tighter(rule, name);
	const [was, is] = [before.value, after.value].map(value => (value[0] === 'value' ? value[1] : null));
	if (way === null || typeof was !== 'number' || typeof is !== 'number')
		fields.report(
			'thresholds',
			`${rule.id} keeps people from being hurt, and whether this tightens ${quote(name)} cannot be decided: leave it`,
		);
	else if (way === 'up' ? is < was : is > was)
		fields.report(
			'thresholds',
			`${rule.id} keeps people from being hurt: a pack may only move ${quote(name)} ${way}, not the other way`,
		);
}
