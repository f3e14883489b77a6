import { type Expression, namesIn } from '../../expressions/tree.ts';
import { neverFails, neverUnknown } from '../../plugs/checks/all.ts';
import type { Question } from '../../sheet/question.ts';
import { namesInWords } from '../reads.ts';
import { type Each, harms, type Rule, stages, type Threshold } from '../rulebook.ts';
import { eachNames, readEach } from './each.ts';
import { type ExampleNames, readExamples } from './example.ts';
import { compileYesNo } from './expression.ts';
import { type Fields, quote } from './fields.ts';
import { type Names, withNames } from './names.ts';
import { readPartsOf } from './parts.ts';
import { readThresholds, typeOfThreshold } from './threshold.ts';
import { checkWords, readPlain, readText, readTexts } from './words.ts';
import { readWork, type UsualWork } from './work.ts';

/** What a rule may name besides its own thresholds. */
export interface RuleNames extends ExampleNames {
	readonly names: Names;
	readonly sections: ReadonlySet<string>;
	readonly cautions: ReadonlySet<string>;
	readonly sources: ReadonlySet<string>;
	readonly parts: ReadonlySet<string>;
}

/** Reads and checks one rule; what is wrong with it goes into the file's problems. */
export function readRule(fields: Fields, topic: string, usual: UsualWork, known: RuleNames): Rule {
	const id = fields.text('id');
	const word = id.split('.')[0]!;
	// Rules about plugs, `pins.*`, are of the harness.
	const section = word === 'pins' ? 'harness' : word;
	if (!/^[a-z]+\.[a-z0-9]+(-[a-z0-9]+)*$/.test(id))
		fields.report('id', `${quote(id)} is not a rule id: section.words-with-hyphens`);
	else if (!known.sections.has(section))
		fields.report('id', `${quote(section)} is no section of rules/sections.yaml: ${[...known.sections].join(', ')}`);
	const each = readEach(fields, known.questions);
	const thresholds = readThresholds(fields, known.names);
	const names = namesOfRule({ each, thresholds }, known.names, known.questions);
	const applies = compileYesNo(fields, 'applies', names);
	const holds = compileYesNo(fields, 'holds', names, true);
	const rule: Rule = {
		id,
		section,
		topic,
		title: readPlain(fields, 'title'),
		stage: fields.oneOf('stage', stages, 'tidy'),
		harm: fields.oneOf('harm', harms, 'annoys'),
		applies,
		thresholds,
		holds: holds ?? ['value', true],
		each,
		why: readText(fields, 'why'),
		do: readTexts(fields, 'do'),
		prove: readText(fields, 'prove'),
		parts: readPartsOf(fields, known.parts, usual.pack),
		...readWork(fields, usual),
		needs: fields.texts('needs', false),
		cautions: listed(fields, 'cautions', known.cautions),
		source: listed(fields, 'source', known.sources),
		examples: readExamples(fields, each, known),
		limit: fields.texts('limit', false),
		no_limit: fields.has('no_limit') ? fields.text('no_limit') : '',
		covered_by: fields.has('covered_by') ? fields.text('covered_by') : '',
		contradiction: readContradiction(fields, holds, known.questions),
		at: fields.source.place(fields.offset),
	};
	checkRule(fields, rule, names, known.questions);
	// What an expression that could not be read would have used is not known.
	if (holds && (applies || !fields.has('applies'))) checkThresholds(fields, rule);
	fields.refuseRest();
	return rule;
}

/** `contradiction: true`, which only a rule that reads nothing but answers can be. */
function readContradiction(
	fields: Fields,
	holds: Expression | null,
	questions: ReadonlyMap<string, Question>,
): boolean {
	if (!fields.has('contradiction')) return false;
	if (fields.text('contradiction') !== 'true') fields.report('contradiction', 'contradiction: true, or leave it out');
	const strange = [...namesIn(holds ?? ['value', true])].find(name => !questions.has(name));
	if (strange) fields.report('contradiction', `a contradiction reads answers only; ${quote(strange)} is none`);
	return true;
}

/** Every name that a rule's expressions and words may use. */
export function namesOfRule(
	{ each, thresholds }: { readonly each: Each | null; readonly thresholds: Readonly<Record<string, Threshold>> },
	names: Names,
	questions: ReadonlyMap<string, Question>,
): Names {
	const own = Object.entries(thresholds).map(([name, threshold]) => [name, typeOfThreshold(threshold)] as const);
	return withNames(names, [...eachNames(each, questions), ...own]);
}

/** What holds for a rule as written and for one that a pack changed: its words name what there is, its examples suffice. */
export function checkRule(fields: Fields, rule: Rule, names: Names, questions: ReadonlyMap<string, Question>): void {
	for (const key of ['title', 'why', 'do', 'prove'] as const) {
		checkWords(fields, key, rule[key], names);
		checkSaid(fields, key, rule, questions);
	}
	if (!fields.has('examples')) return;
	const then = new Set(rule.examples.map(example => example.then));
	for (const need of ['fails', 'holds', 'cannot-tell'] as const) {
		if (need === 'fails' && rule.each && neverFails.includes(rule.each.answer)) continue;
		if (need === 'cannot-tell' && rule.each && neverUnknown.includes(rule.each.answer)) continue;
		if (!then.has(need))
			fields.report(
				'examples',
				`no example of this rule comes out as ${need}: each needs fails, holds and cannot-tell`,
			);
	}
}

/** Notes a choice that a text prints although its question does not say how it reads inside a sentence. */
function checkSaid(
	fields: Fields,
	key: 'title' | 'why' | 'do' | 'prove',
	{ [key]: texts, thresholds, each }: Rule,
	questions: ReadonlyMap<string, Question>,
): void {
	for (const name of [texts].flat().flatMap(namesInWords)) {
		const value = Object.hasOwn(thresholds, name) ? thresholds[name]!.value : null;
		const id = value?.[0] === 'name' ? value[1] : name === 'item' && each ? each.answer : name;
		const question = questions.get(id);
		if (question && Object.keys(question.choices).length > 0 && !question.said)
			fields.advise(
				key,
				`${key}: {${name}} prints a choice, and ${id} does not say how it reads in a sentence (said:)`,
			);
	}
}

/** Notes each threshold that neither the expressions nor the words of the rule use. */
function checkThresholds(fields: Fields, { holds, applies, title, why, prove, do: steps, thresholds }: Rule): void {
	const used = namesIn(holds, applies ? namesIn(applies) : new Set());
	for (const name of [title, why, prove, ...steps].flatMap(namesInWords)) used.add(name);
	for (const name of Object.keys(thresholds)) {
		if (!used.has(name))
			fields.report('thresholds', `the threshold ${quote(name)} is used nowhere: name it in holds or take it away`);
	}
}

function listed(fields: Fields, key: 'cautions' | 'source', known: ReadonlySet<string>): string[] {
	const words = fields.texts(key, key === 'source');
	const file = key === 'source' ? 'sources' : key;
	for (const word of words)
		if (!known.has(word)) fields.report(key, `${quote(word)} is not in rules/${file}.yaml: ${[...known].join(', ')}`);
	return words;
}
