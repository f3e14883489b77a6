import type { AnyQuantity } from '../../quantities/quantity.ts';
import type { Question, UsualCase } from '../../sheet/question.ts';
import type { Rule, Rulebook, Topic } from '../rulebook.ts';
import { Fields, quote } from './fields.ts';
import { namesOf } from './names.ts';
import { finishQuestion, readCase, readQuestion } from './question.ts';
import { changeRule, type RuleNames, readRule } from './rule.ts';
import { type Problem, Source, type SourceText } from './source.ts';

/**
 * Adds rule packs to a rulebook: their questions and rules, their usual values by model year (named with the pack
 * wherever they are used), and their changes of words and thresholds. A pack removes no rule and changes no stage and
 * no harm; what it changed is kept in `changed`.
 */
export function addPacks(
	base: Rulebook,
	files: readonly SourceText[],
	quantities: readonly AnyQuantity[],
): { rulebook: Rulebook; problems: readonly Problem[] } {
	const problems: Problem[] = [];
	let rulebook = base;
	for (const file of [...files].sort((a, b) => (a.path < b.path ? -1 : 1))) {
		const source = new Source(file, problems);
		if (source.root) rulebook = addPack(rulebook, new Fields(source, source.root), quantities);
	}
	return { rulebook, problems };
}

function addPack(base: Rulebook, root: Fields, quantities: readonly AnyQuantity[]): Rulebook {
	const pack = root.text('pack');
	const topic = root.has('topic') ? root.text('topic') : pack;
	const section = root.has('section')
		? root.oneOf(
				'section',
				base.sections.map(({ id }) => id),
				base.sections[0]?.id ?? '',
			)
		: '';
	const place = root.has('place') ? root.number('place') : 1000;
	const drafts = root.innerList('questions', false).map(fields => readQuestion(fields, section, topic));
	const names = namesOf([...base.questions, ...drafts.map(({ question }) => question)], quantities);
	const taken = new Set([...base.questions.map(({ id }) => id), ...quantities.map(({ id }) => id)]);
	for (const { question, fields } of drafts) {
		if (taken.has(question.id)) fields.report('id', `${quote(question.id)} is already a question or a quantity`);
		if (section === '')
			fields.report('id', 'a pack that asks questions says which section they belong to (section: engine)');
	}
	const added = drafts.map(draft => finishQuestion(draft, names));
	const questions = withPrefills(insertBySection([...base.questions], added, base), root, names, pack);
	const known: RuleNames = {
		names,
		questions: new Map(questions.map(question => [question.id, question])),
		quantities: new Map(quantities.map(quantity => [quantity.id, quantity])),
		builds: new Set(Object.keys(base.builds)),
		cautions: new Set(base.cautions.map(({ id }) => id)),
		sources: new Set(Object.keys(base.sources)),
	};
	const seen = new Set(base.rules.map(({ id }) => id));
	const rules = root.innerList('rules', false).map(fields => {
		const rule = readRule(fields, topic, known);
		if (seen.has(rule.id)) fields.report('id', `${quote(rule.id)} is already a rule: a pack changes it under changes:`);
		if (!base.sections.some(({ id }) => id === rule.section))
			fields.report('id', `${quote(rule.section)} is no section`);
		seen.add(rule.id);
		return rule;
	});
	const { changed, rules: after } = withChanges(base.rules, root, known, pack);
	root.refuseRest();
	const ownTopic: Topic[] =
		added.length + rules.length > 0
			? [
					{
						topic,
						section: section || (rules[0]?.section ?? ''),
						place,
						questions: added.map(({ id }) => id),
						rules: rules.map(({ id }) => id),
					},
				]
			: [];
	return {
		...base,
		topics: [...base.topics, ...ownTopic],
		questions,
		rules: [...after, ...rules],
		changed: [...base.changed, ...changed],
	};
}

/** New questions stand behind those of their section. */
function insertBySection(questions: Question[], added: readonly Question[], base: Rulebook): Question[] {
	const order = base.sections.map(({ id }) => id);
	for (const question of added) {
		const rank = order.indexOf(question.section);
		const after = questions.findLastIndex(({ section }) => order.indexOf(section) <= rank);
		questions.splice(after + 1, 0, question);
	}
	return questions;
}

/** Usual values that a pack gives by model year go before the rulebook's own. */
function withPrefills(
	questions: readonly Question[],
	root: Fields,
	names: RuleNames['names'],
	pack: string,
): Question[] {
	const cases = new Map<string, UsualCase[]>();
	for (const inner of root.innerList('prefills', false)) {
		const id = inner.text('answer');
		const question = questions.find(other => other.id === id);
		if (!question) inner.report('answer', `${quote(id)} is no answer`);
		else cases.set(id, [...(cases.get(id) ?? []), ...readCase(inner, question, names, pack)]);
	}
	return questions.map(question => ({ ...question, usual: [...(cases.get(question.id) ?? []), ...question.usual] }));
}

function withChanges(rules: readonly Rule[], root: Fields, known: RuleNames, pack: string) {
	const changed: { rule: string; pack: string; fields: readonly string[] }[] = [];
	const after = new Map(rules.map(rule => [rule.id, rule]));
	for (const inner of root.innerList('changes', false)) {
		const id = inner.text('rule');
		const rule = after.get(id);
		if (!rule) {
			inner.report('rule', `${quote(id)} is no rule`);
			continue;
		}
		after.set(id, changeRule(inner, rule, known));
		changed.push({ rule: id, pack, fields: inner.keys().filter(key => key !== 'rule') });
	}
	return { changed, rules: [...after.values()] };
}
