import type { AnyQuantity } from '../../quantities/quantity.ts';
import type { Question } from '../../sheet/question.ts';
import type { NamedBuild, Procedure, Rule, Rulebook, Topic } from '../rulebook.ts';
import { readAnswer } from './example.ts';
import { Fields, quote } from './fields.ts';
import { namesOf } from './names.ts';
import { finishQuestion, type QuestionDraft, readQuestion } from './question.ts';
import { type RuleNames, readRule } from './rule.ts';
import { type Problem, Source, type SourceText } from './source.ts';
import {
	readCautions,
	readCircuits,
	readCodes,
	readLimits,
	readProcedure,
	readSections,
	readSources,
} from './tables.ts';

export interface Compilation {
	readonly rulebook: Rulebook;
	readonly problems: readonly Problem[];
}

/**
 * Compiles the files of rules/ into one rulebook. Every problem of every file is found in one go; a rulebook with
 * problems is not to be used.
 */
export function compileRulebook(files: readonly SourceText[], quantities: readonly AnyQuantity[]): Compilation {
	const problems: Problem[] = [];
	const sorted = [...files].sort((a, b) => (a.path < b.path ? -1 : 1));
	const roots = new Map<string, Fields>();
	for (const file of sorted) {
		const source = new Source(file, problems);
		if (source.root) roots.set(file.path, new Fields(source, source.root));
	}
	const table = (name: string) => roots.get(name);
	const sections = read(table('sections.yaml'), readSections) ?? [];
	const order = new Map(sections.map(({ id }, index) => [id, index]));

	const topics = topicFiles(roots, order);
	const drafts = topics.flatMap(({ root, section, topic }) =>
		root.innerList('questions', false).map(fields => readQuestion(fields, section, topic)),
	);
	const names = namesOf(
		drafts.map(({ question }) => question),
		quantities,
	);
	refuseDoubles(drafts, quantities);
	const questions = drafts.map(draft => finishQuestion(draft, names));
	const byId = new Map(questions.map(question => [question.id, question]));

	const sources = read(table('sources.yaml'), readSources) ?? {};
	const cautions = read(table('cautions.yaml'), root => readCautions(root, names)) ?? [];
	const cautionIds = new Set(cautions.map(({ id }) => id));
	const builds = readBuilds(roots, byId);
	const known: RuleNames = {
		names,
		questions: byId,
		quantities: new Map(quantities.map(quantity => [quantity.id, quantity])),
		builds: new Set(Object.keys(builds)),
		cautions: cautionIds,
		sources: new Set(Object.keys(sources)),
	};
	const seen = new Map<string, string>();
	const rules: Rule[] = topics.flatMap(({ root, topic }) =>
		root.innerList('rules', false).map(fields => {
			const rule = readRule(fields, topic, known);
			const other = seen.get(rule.id);
			if (other) fields.report('id', `${quote(rule.id)} is already at ${other}`);
			seen.set(rule.id, rule.at);
			if (!order.has(rule.section)) fields.report('id', `${quote(rule.section)} is no section of rules/sections.yaml`);
			return rule;
		}),
	);
	for (const { root } of topics) root.refuseRest();
	const procedures = [...roots]
		.filter(([path]) => path.startsWith('procedures/'))
		.map(([, root]): Procedure => readProcedure(root, names, cautionIds))
		.sort((a, b) => a.place - b.place);
	const rulebook: Rulebook = {
		sections,
		topics: topics.map(
			({ root, topic, section, place }): Topic => ({
				topic,
				section,
				place,
				questions: drafts.filter(({ fields }) => fields.source === root.source).map(({ question }) => question.id),
				rules: rules.filter(rule => rule.topic === topic).map(({ id }) => id),
			}),
		),
		questions,
		rules,
		cautions,
		sources,
		limits: read(table('limits.yaml'), readLimits) ?? {},
		circuits: read(table('circuits.yaml'), root => readCircuits(root, names)) ?? [],
		procedures,
		codes: read(table('trouble-codes.yaml'), readCodes) ?? {},
		builds,
		changed: [],
	};
	return { rulebook, problems };
}

function read<T>(root: Fields | undefined, reader: (root: Fields) => T): T | undefined {
	if (!root) return undefined;
	const result = reader(root);
	root.refuseRest();
	return result;
}

interface TopicFile {
	readonly root: Fields;
	readonly section: string;
	readonly topic: string;
	readonly place: number;
}

/** Topic files are those in a folder named after a section. In the order of the interview. */
function topicFiles(roots: ReadonlyMap<string, Fields>, order: ReadonlyMap<string, number>): TopicFile[] {
	const found = [...roots].flatMap(([path, root]): TopicFile[] => {
		const section = path.split('/')[0] ?? '';
		if (!path.includes('/') || section === 'examples' || section === 'procedures') return [];
		if (!order.has(section)) root.report('topic', `the folder ${quote(section)} is no section of rules/sections.yaml`);
		return [{ root, section, topic: root.text('topic'), place: root.number('place') }];
	});
	const seen = new Map<string, string>();
	for (const { topic, root } of found) {
		if (seen.has(topic)) root.report('topic', `the topic ${quote(topic)} is already in ${seen.get(topic)}`);
		seen.set(topic, root.source.path);
	}
	const rank = (file: TopicFile) => order.get(file.section) ?? order.size;
	return found.sort((a, b) => rank(a) - rank(b) || a.place - b.place || (a.topic < b.topic ? -1 : 1));
}

function refuseDoubles(drafts: readonly QuestionDraft[], quantities: readonly AnyQuantity[]): void {
	const seen = new Map(quantities.map(({ id }) => [id, 'a quantity']));
	for (const { question, fields } of drafts) {
		const other = seen.get(question.id);
		if (other) fields.report('id', `${quote(question.id)} is already ${other}`);
		seen.set(question.id, `asked at ${fields.source.place(fields.offset)}`);
	}
}

/** The named builds: rules/examples/NAME.yaml, or NAME/ with a file a section. */
function readBuilds(
	roots: ReadonlyMap<string, Fields>,
	questions: ReadonlyMap<string, Question>,
): Record<string, NamedBuild> {
	const builds: Record<string, Record<string, unknown>> = {};
	for (const [path, root] of roots) {
		const name = /^examples\/([a-z-]+)(\/[a-z-]+)?\.yaml$/.exec(path)?.[1];
		if (!name) continue;
		const build = (builds[name] ??= {});
		for (const id of root.keys()) {
			const question = questions.get(id);
			if (question) build[id] = readAnswer(root, id, question);
			else root.report(id, `${quote(id)} is no answer`);
		}
	}
	return builds;
}
