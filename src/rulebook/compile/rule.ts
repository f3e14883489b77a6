import { type Expression, namesIn } from '../../expressions/tree.ts';
import type { Question } from '../../sheet/question.ts';
import { type Each, harms, type Rule, stages, type Threshold } from '../rulebook.ts';
import { readConstant } from './constant.ts';
import { type ExampleNames, readExamples } from './example.ts';
import { compileExpression } from './expression.ts';
import { type Fields, quote } from './fields.ts';
import type { Names, Type } from './names.ts';

/** What a rule may name besides its own thresholds. */
export interface RuleNames extends ExampleNames {
	readonly names: Names;
	readonly cautions: ReadonlySet<string>;
	readonly sources: ReadonlySet<string>;
}

/** Reads and checks one rule; what is wrong with it goes into the file's problems. */
export function readRule(fields: Fields, topic: string, known: RuleNames): Rule {
	const id = fields.text('id');
	if (!/^[a-z]+\.[a-z0-9]+(-[a-z0-9]+)*$/.test(id))
		fields.report('id', `${quote(id)} is not a rule id: section.words-with-hyphens`);
	const each = readEach(fields, known.questions);
	const thresholds = readThresholds(fields, known.names);
	const names = new Map([...known.names, ...eachNames(each, known.questions)]);
	for (const [name, threshold] of Object.entries(thresholds)) names.set(name, typeOfThreshold(threshold));
	const applies = readYesNo(fields, 'applies', names, false);
	const holds = readYesNo(fields, 'holds', names, true);
	const rule: Rule = {
		id,
		section: id.split('.')[0] ?? '',
		topic,
		title: fields.text('title'),
		stage: fields.oneOf('stage', stages, 'tidy'),
		harm: fields.oneOf('harm', harms, 'annoys'),
		applies,
		thresholds,
		holds: holds ?? ['value', true],
		each,
		why: fields.text('why'),
		do: fields.texts('do'),
		prove: fields.text('prove'),
		parts: fields.texts('parts', false),
		cautions: listed(fields, 'cautions', known.cautions),
		source: listed(fields, 'source', known.sources),
		examples: readExamples(fields, known),
		at: fields.source.place(fields.offset),
	};
	for (const text of [rule.why, rule.prove, rule.title, ...rule.do]) checkWords(fields, text, names);
	checkUsed(fields, rule);
	fields.refuseRest();
	return rule;
}

/** A rule with the words and thresholds that a pack sets anew; nothing else of it can be changed. */
export function changeRule(fields: Fields, rule: Rule, known: RuleNames): Rule {
	const own = readThresholds(fields, known.names);
	for (const name of Object.keys(own)) {
		const before = Object.hasOwn(rule.thresholds, name) ? rule.thresholds[name] : undefined;
		if (!before)
			fields.report(
				'thresholds',
				`${quote(name)} is no threshold of ${rule.id}: ${Object.keys(rule.thresholds).join(', ')}`,
			);
		else if (before.kind !== own[name]!.kind)
			fields.report('thresholds', `${quote(name)} is a ${before.kind}, this is a ${own[name]!.kind}`);
	}
	const thresholds = { ...rule.thresholds, ...own };
	const names = new Map([...known.names, ...eachNames(rule.each, known.questions)]);
	for (const [name, threshold] of Object.entries(thresholds)) names.set(name, typeOfThreshold(threshold));
	const text = (key: 'title' | 'why' | 'prove') => (fields.has(key) ? fields.text(key) : rule[key]);
	const changed: Rule = {
		...rule,
		thresholds,
		title: text('title'),
		why: text('why'),
		prove: text('prove'),
		do: fields.has('do') ? fields.texts('do') : rule.do,
		parts: fields.has('parts') ? fields.texts('parts') : rule.parts,
	};
	for (const words of [changed.why, changed.prove, changed.title, ...changed.do]) checkWords(fields, words, names);
	fields.refuseRest();
	return changed;
}

function readYesNo(fields: Fields, key: string, names: Names, need: boolean): Expression | null {
	const placed = fields.placed(key, need);
	const compiled = placed && compileExpression(fields.source, placed, names);
	if (!compiled) return null;
	if (compiled.type.is !== 'yes-no') fields.report(key, `${key}: a yes or no is needed here`);
	return compiled.tree;
}

function readThresholds(fields: Fields, names: Names): Record<string, Threshold> {
	const inner = fields.inner('thresholds', false);
	const thresholds: Record<string, Threshold> = {};
	for (const name of inner?.keys() ?? []) {
		const placed = inner!.placed(name);
		if (!placed) continue;
		if (!/^[a-z][a-z0-9_]*$/.test(name))
			inner!.report(name, `${quote(name)} is not a threshold's name: small letters and _`);
		if (/^[-+]?[\d.]/.test(placed.text)) {
			const constant = readConstant(fields.source, placed, null);
			if (constant)
				thresholds[name] = {
					value: ['value', constant.value],
					kind: constant.kind,
					...(constant.kind === 'ratio' ? { unit: constant.unit.symbol } : {}),
				};
			continue;
		}
		const compiled = compileExpression(fields.source, placed, names);
		if (!compiled) continue;
		const kind =
			compiled.type.is === 'number' ? compiled.type.kind : compiled.type.is === 'text' ? 'words' : compiled.type.is;
		thresholds[name] = { value: compiled.tree, kind };
	}
	return thresholds;
}

function typeOfThreshold({ kind }: Threshold): Type {
	if (kind === 'words') return { is: 'text', choices: null };
	if (kind === 'yes-no') return { is: 'yes-no' };
	if (kind === 'list') return { is: 'list', choices: null };
	return { is: 'number', kind };
}

const overs = { several: 'choices', 'per-cylinder': 'cylinders', codes: 'codes', circuits: 'circuits' } as const;

function readEach(fields: Fields, questions: ReadonlyMap<string, Question>): Each | null {
	const placed = fields.placed('each', false);
	const subjects = fields.has('only') ? fields.texts('only') : null;
	if (!placed) return null;
	const question = questions.get(placed.text);
	const over = question && (overs as Record<string, Each['over']>)[question.kind];
	if (!over) {
		fields.report(
			'each',
			`${quote(placed.text)} is no answer with several parts (ticked choices, cylinders, codes, circuits)`,
		);
		return null;
	}
	for (const subject of subjects ?? []) {
		if (over === 'choices' && !(subject in question.choices))
			fields.report('only', `${quote(subject)} is not one of its choices`);
	}
	return { answer: question.id, over, subjects };
}

/** The names that stand for the part at hand: what `item` and `value` are depends on the answer. */
export function eachNames(each: Each | null, questions: ReadonlyMap<string, Question>): [string, Type][] {
	if (!each) return [];
	const question = questions.get(each.answer)!;
	const text = (choices: readonly string[] | null): Type => ({ is: 'text', choices });
	switch (each.over) {
		case 'choices':
			return [['item', text(each.subjects ?? Object.keys(question.choices))]];
		case 'cylinders':
			return [
				['item', text(null)],
				['value', { is: 'number', kind: question.of[0] ?? 'ratio' }],
			];
		case 'codes':
			return [
				['item', text(null)],
				['code_title', text(null)],
				['code_topics', text(null)],
				['code_known', { is: 'yes-no' }],
			];
		case 'circuits':
			return [
				['item', text(null)],
				['state', text(['done', 'to-do', 'not-used'])],
			];
	}
}

function listed(fields: Fields, key: string, known: ReadonlySet<string>): string[] {
	const words = fields.texts(key, key === 'source');
	for (const word of words)
		if (!known.has(word))
			fields.report(key, `${quote(word)} is not in rules/${key === 'source' ? 'sources' : key}.yaml`);
	return words;
}

function checkWords(fields: Fields, text: string, names: Names): void {
	for (const [, name] of text.matchAll(/\{([^{}]*)\}/g)) {
		if (!names.has(name!)) fields.report('why', `{${name}} is no answer, no quantity and no threshold of this rule`);
	}
}

function checkUsed(fields: Fields, rule: Rule): void {
	const used = new Set(namesIn(rule.holds));
	if (rule.applies) namesIn(rule.applies, used);
	const words = [rule.title, rule.why, rule.prove, ...rule.do].join(' ');
	for (const name of Object.keys(rule.thresholds)) {
		if (!used.has(name) && !words.includes(`{${name}}`))
			fields.report('thresholds', `the threshold ${quote(name)} is used nowhere`);
	}
	const then = new Set(rule.examples.map(example => example.then));
	for (const need of ['fails', 'holds', 'cannot-tell'] as const) {
		if (!then.has(need)) fields.report('examples', `${rule.id || 'the rule'} has no example that comes out as ${need}`);
	}
}
