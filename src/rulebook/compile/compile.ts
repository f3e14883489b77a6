import type { AnyQuantity } from '../../quantities/quantity.ts';
import type { Rulebook, Topic } from '../rulebook.ts';
import { graphOf, refuseDoubles, refuseUnread } from './agreement.ts';
import { refuseUnlimited } from './boost-limit.ts';
import { readBuilds } from './builds.ts';
import { readChannels } from './channels.ts';
import { readEpisodes } from './episodes.ts';
import { type Fields, quote } from './fields.ts';
import { readTerms, refuseWords, wordFinder } from './glossary.ts';
import { readIntervals } from './intervals.ts';
import { type Names, namesOf } from './names.ts';
import { readParts } from './parts.ts';
import { readProcedure } from './procedure.ts';
import { finishQuestion, hasKind, readQuestion } from './question.ts';
import { readReadings } from './readings.ts';
import { rootsOf } from './roots.ts';
import { type RuleNames, readRule } from './rule.ts';
import { inOrder, type Problem, type SourceText } from './source.ts';
import { readCautions, readCodes, readLimits, readSections, readSources, readWorksheet } from './tables.ts';
import { topicFiles } from './topics.ts';
import { readVocabulary } from './vocabulary.ts';
import { readUsualWork, refuseNeeds, type UsualWork } from './work.ts';
import { type ReadYaml, readYaml } from './yaml.ts';

export interface Compilation {
	readonly rulebook: Rulebook;
	readonly problems: readonly Problem[];
}

/**
 * Compiles the files of rules/ into one rulebook. The problems of every file are found in one go; a rulebook with
 * problems is not to be used. Reading YAML is two thirds of the work: whoever compiles the same files many times hands in
 * a `read` that reads each text once.
 */
export function compileRulebook(
	files: readonly SourceText[],
	quantities: readonly AnyQuantity[],
	read: (text: string) => ReadYaml = readYaml,
): Compilation {
	const problems: Problem[] = [];
	const roots = rootsOf(files, problems, read);
	// What an unreadable file should have held would be missed in all the others.
	if (problems.length > 0) return { rulebook: nothing, problems: inOrder(problems) };
	const table = <T>(name: string, reader: (root: Fields) => T): T => {
		const root = roots.get(name)!;
		const found = reader(root);
		root.refuseRest();
		return found;
	};
	const words = table('words.yaml', readTerms);
	const find = wordFinder(words);
	for (const [path, { source }] of roots)
		if (path !== 'words.yaml' && path !== 'sources.yaml') refuseWords(source, find);
	const sections = table('sections.yaml', root => readSections(root, quantities));
	const topics = topicFiles(roots, sections).map(file => ({ ...file, work: readUsualWork(file.root, false) }));
	// So would what hangs on a kind that is none.
	if (topics.flatMap(({ root }) => root.innerList('questions', false).filter(fields => !hasKind(fields))).length > 0)
		return { rulebook: nothing, problems: inOrder(problems) };
	const drafts = topics.flatMap(({ root, section, topic, work }) =>
		root.innerList('questions', false).map(fields => readQuestion(fields, section, topic, work)),
	);
	refuseDoubles(drafts, quantities);
	const asked = drafts.map(({ question }) => question);
	const names = namesOf(asked, quantities);
	const cautions = table('cautions.yaml', root => readCautions(root, names));
	const cautionIds = new Set(cautions.map(({ id }) => id));
	const questions = drafts.map(draft => finishQuestion(draft, names, cautionIds));
	const byId = new Map(questions.map(question => [question.id, question]));
	const sources = table('sources.yaml', root => readSources(root, quantities));
	const builds = readBuilds(roots, byId);
	const parts = table('parts.yaml', readParts);
	const circuits = circuitsIn(roots, names);
	const known: RuleNames = {
		names,
		questions: byId,
		quantities: new Map(quantities.map(quantity => [quantity.id, quantity])),
		builds: new Set(Object.keys(builds)),
		sections: new Set(sections.map(({ id }) => id)),
		cautions: cautionIds,
		sources: new Set(Object.keys(sources)),
		parts: new Set(parts.map(({ id }) => id)),
	};
	const { rules, fieldsOf } = readRules(topics, known, new Set(circuits.vocabulary.circuits.map(({ id }) => id)));
	const procedures = [...roots]
		.filter(([path]) => path.startsWith('procedures/'))
		.map(([, root]) =>
			readProcedure(root, { names, cautions: cautionIds, rules: new Map(rules.map(rule => [rule.id, rule])) }),
		)
		.sort((a, b) => a.place - b.place);
	const topicIds = new Set(topics.map(({ topic }) => topic));
	const rulebook: Rulebook = {
		sections,
		topics: topics.map(
			({ topic, section, place }): Topic => ({
				topic,
				section,
				place,
				questions: asked.filter(question => question.topic === topic).map(({ id }) => id),
				rules: rules.filter(rule => rule.topic === topic).map(({ id }) => id),
			}),
		),
		questions,
		rules,
		cautions,
		sources,
		limits: table('limits.yaml', root => readLimits(root, quantities)),
		readings: table('readings.yaml', root => readReadings(root, names)),
		intervals: table('intervals.yaml', root => readIntervals(root, names, rules)),
		...circuits,
		parts,
		procedures,
		codes: table('trouble-codes.yaml', root => readCodes(root, topicIds, new Set(rules.map(({ id }) => id)))),
		episodes: table('episodes.yaml', readEpisodes),
		channels: table('channels.yaml', readChannels),
		words,
		builds,
		changed: [],
		packs: [],
	};
	const [first] = topics;
	// A circle or an unread question is reported only of files that are right by themselves.
	const graph = first && problems.length === 0 ? graphOf(questions, quantities, drafts, first.root) : null;
	if (graph) {
		refuseUnread(drafts, graph, rulebook);
		refuseUnlimited(rules, fieldsOf, graph, rulebook.limits);
	}
	return { rulebook, problems: inOrder(problems) };
}

const nothing: Rulebook = {
	sections: [],
	topics: [],
	questions: [],
	rules: [],
	cautions: [],
	sources: {},
	limits: {},
	readings: [],
	intervals: [],
	worksheet: [],
	vocabulary: {
		circuits: [],
		abbreviations: {},
		filler: [],
		unclear: [],
		sorts: {},
		sameAs: {},
		meetings: {},
		index: { whole: [], bare: [], unclear: [] },
	},
	parts: [],
	procedures: [],
	codes: {},
	episodes: null,
	channels: [],
	words: [],
	builds: {},
	changed: [],
	packs: [],
};

/** What circuits.yaml and meetings.yaml hold, which are read together. */
function circuitsIn(roots: ReadonlyMap<string, Fields>, names: Names): Pick<Rulebook, 'worksheet' | 'vocabulary'> {
	const [circuits, meetings] = [roots.get('circuits.yaml')!, roots.get('meetings.yaml')!];
	const found = { worksheet: readWorksheet(circuits, names), vocabulary: readVocabulary(circuits, meetings, names) };
	circuits.refuseRest();
	meetings.refuseRest();
	return found;
}

/** A topic file, with what is usual for its work. */
interface Draft {
	readonly root: Fields;
	readonly topic: string;
	readonly work: UsualWork;
}

/** The rules of all topics, each id once; what one needs first is there. */
function readRules(topics: readonly Draft[], known: RuleNames, circuits: ReadonlySet<string>) {
	const seen = new Map<string, Fields>();
	const rules = topics.flatMap(({ root, topic, work }) => {
		const read = root.innerList('rules', false).map(fields => {
			const rule = readRule(fields, topic, work, known);
			const other = seen.get(rule.id);
			if (other)
				fields.report('id', `${quote(rule.id)} is already at ${other.source.place(other.offset)}: take another id`);
			seen.set(rule.id, fields);
			return rule;
		});
		root.refuseRest();
		return read;
	});
	refuseNeeds(rules, seen, circuits);
	return { rules, fieldsOf: seen };
}
