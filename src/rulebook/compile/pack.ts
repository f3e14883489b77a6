import type { AnyQuantity } from '../../quantities/quantity.ts';
import type { Question, UsualCase } from '../../sheet/question.ts';
import { nearest } from '../../text/likeness.ts';
import { namesRead } from '../reads.ts';
import type { Rule, Rulebook, Topic } from '../rulebook.ts';
import { graphOf, refuseDoubles, refuseUnread } from './agreement.ts';
import { changeRule } from './change.ts';
import { Fields, quote } from './fields.ts';
import { refuseWords, wordFinder } from './glossary.ts';
import { type Names, namesOf } from './names.ts';
import { finishQuestion, hasKind, type QuestionDraft, readQuestion } from './question.ts';
import { type RuleNames, readRule } from './rule.ts';
import { inOrder, type Problem, Source, type SourceText } from './source.ts';
import { readCase } from './usual.ts';
import { readUsualWork, refuseNeeds, type UsualWork } from './work.ts';

/**
 * Adds rule packs to a rulebook: their questions and rules, their usual values by model year (named with the pack
 * wherever they are used), and their changes of words and thresholds. A pack removes no rule and changes no stage and
 * no harm; what it changed is kept in `changed`. A topic file like those of rules/ is a pack too, named after its topic.
 */
export function addPacks(
	base: Rulebook,
	files: readonly SourceText[],
	quantities: readonly AnyQuantity[],
): { rulebook: Rulebook; problems: readonly Problem[]; warnings: readonly Problem[] } {
	const problems: Problem[] = [];
	const warnings: Problem[] = [];
	let rulebook = base;
	const find = wordFinder(base.words);
	for (const file of [...files].sort((a, b) => (a.path < b.path ? -1 : 1))) {
		const source = new Source(file, problems, warnings);
		refuseWords(source, find);
		if (source.root) rulebook = addPack(rulebook, new Fields(source, source.root), quantities);
	}
	return { rulebook, problems: inOrder(problems), warnings: inOrder(warnings) };
}

function addPack(base: Rulebook, root: Fields, quantities: readonly AnyQuantity[]): Rulebook {
	const pack = root.text(root.has('pack') ? 'pack' : 'topic');
	const topic = root.has('topic') ? root.text('topic') : pack;
	if (base.topics.some(other => other.topic === topic))
		root.reportStart(`the topic ${quote(topic)} is there already: name this one otherwise (topic: ...)`);
	if (root.innerList('questions', false).filter(fields => !hasKind(fields)).length > 0) return base;
	const work = readUsualWork(root, true);
	const drafts = readQuestions(base, root, topic, work);
	refuseDoubles(drafts, quantities, base.questions);
	const names = namesOf([...base.questions, ...drafts.map(({ question }) => question)], quantities);
	const cautions = new Set(base.cautions.map(({ id }) => id));
	const added = drafts.map(draft => finishQuestion(draft, names, cautions));
	const questions = withPrefills(insertBySection(base, added), base.rules, root, { names, pack });
	const known: RuleNames = {
		names,
		questions: new Map(questions.map(question => [question.id, question])),
		quantities: new Map(quantities.map(quantity => [quantity.id, quantity])),
		builds: new Set(Object.keys(base.builds)),
		sections: new Set(base.sections.map(({ id }) => id)),
		cautions,
		sources: new Set(Object.keys(base.sources)),
		parts: new Set(base.parts.map(({ id }) => id)),
	};
	const rules = readRules(base, root, topic, work, known);
	const { changed, rules: after } = withChanges(base.rules, root, known, pack);
	const page: Topic = {
		topic,
		section: root.has('section') ? root.text('section') : (added[0]?.section ?? rules[0]?.section ?? ''),
		place: root.has('place') ? root.number('place') : 1000,
		questions: added.map(({ id }) => id),
		rules: rules.map(({ id }) => id),
	};
	root.refuseRest();
	if (root.source.problems.length === 0) {
		const graph = graphOf(questions, quantities, drafts, root);
		if (graph) refuseUnread(drafts, graph, { rules, procedures: [], vocabulary: base.vocabulary });
	}
	return {
		...base,
		topics: added.length + rules.length > 0 ? [...base.topics, page] : base.topics,
		questions,
		rules: [...after, ...rules],
		changed: [...base.changed, ...changed],
		packs: [...base.packs, pack],
	};
}

/** The questions of a pack, each on the page of the section it says, or of the one that its id begins with. */
function readQuestions(base: Rulebook, root: Fields, topic: string, work: UsualWork): QuestionDraft[] {
	const sections = base.sections.map(({ id }) => id);
	const section = root.has('section') ? root.oneOf('section', sections, sections[0] ?? '') : null;
	return root.innerList('questions', false).map(fields => {
		const own = section ?? fields.text('id').split('.')[0]!;
		if (!sections.includes(own))
			fields.report(
				'id',
				`${quote(own)} is no section: name one of ${sections.join(', ')}, or say section: at the head`,
			);
		return readQuestion(fields, own, topic, work);
	});
}

/** The base's questions with new ones behind those of their section. */
function insertBySection(base: Rulebook, added: readonly Question[]): Question[] {
	const order = base.sections.map(({ id }) => id);
	const questions = [...base.questions];
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
	rules: readonly Rule[],
	root: Fields,
	{ names, pack }: { readonly names: Names; readonly pack: string },
): Question[] {
	const cases = new Map<string, UsualCase[]>();
	for (const inner of root.innerList('prefills', false)) {
		const id = inner.text('answer');
		const question = questions.find(other => other.id === id);
		if (!question) inner.report('answer', `${quote(id)} is no answer`);
		else if (mustBeFound(question, rules))
			inner.report('answer', `${quote(id)} is something to look at or to try: no pack can know it`);
		else cases.set(id, [...(cases.get(id) ?? []), ...readCase(inner, question, names, pack)]);
	}
	return questions.map(question => ({ ...question, usual: [...(cases.get(question.id) ?? []), ...question.usual] }));
}

/**
 * What is true of one car and not of a family: what was tried or tested, what only a running car shows, and the choices on
 * which it hangs whether somebody gets hurt.
 */
function mustBeFound({ id, kind, effort, known_from }: Question, rules: readonly Rule[]): boolean {
	if (effort === 'test' || known_from !== null) return true;
	return kind === 'choice' && rules.some(rule => rule.harm === 'person' && namesRead(rule).has(id));
}

/** The rules of a pack, none with the id of another. */
function readRules(base: Rulebook, root: Fields, topic: string, work: UsualWork, known: RuleNames): Rule[] {
	const seen = new Set(base.rules.map(({ id }) => id));
	const placed = new Map<string, Fields>();
	const rules = root.innerList('rules', false).map(fields => {
		const rule = readRule(fields, topic, work, known);
		placed.set(rule.id, fields);
		if (seen.has(rule.id)) fields.report('id', `${quote(rule.id)} is already a rule: a pack changes it under changes:`);
		seen.add(rule.id);
		return rule;
	});
	refuseNeeds([...base.rules, ...rules], placed, new Set(base.vocabulary.circuits.map(({ id }) => id)));
	return rules;
}

/** The base's rules with what a pack says anew about some of them. */
function withChanges(
	base: readonly Rule[],
	root: Fields,
	known: RuleNames,
	pack: string,
): { readonly rules: Rule[]; readonly changed: Rulebook['changed'] } {
	const rules = new Map(base.map(rule => [rule.id, rule]));
	const changed = root.innerList('changes', false).flatMap(inner => {
		const id = inner.text('rule');
		const rule = rules.get(id);
		if (!rule) {
			inner.report('rule', `${quote(id)} is no rule; the nearest are ${nearest(id, [...rules.keys()]).join(', ')}`);
			return [];
		}
		rules.set(id, changeRule(inner, rule, known, pack));
		return [{ rule: id, pack, fields: inner.keys().filter(key => key !== 'rule') }];
	});
	return { rules: [...rules.values()], changed };
}
