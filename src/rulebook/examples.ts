import type { Outcome } from '../expressions/tree.ts';
import { type Graph, slotNamed } from '../graph/graph.ts';
import { type State, solve } from '../graph/solve.ts';
import { logQuantities } from '../log/all.ts';
import { perPull, pullNumbers } from '../log/quantities.ts';
import { plugsOf } from '../plugs/parts.ts';
import { givenAnswers } from '../quantities/from-sheet.ts';
import { type Answer, emptySheet, type Sheet, splitId, withAnswer } from '../sheet/sheet.ts';
import { Judge, type Verdict } from './judge.ts';
import { namesRead } from './reads.ts';
import type { Example, NamedBuild, Rule, Rulebook } from './rulebook.ts';

/** An example that came out otherwise than it says. */
export interface WrongExample {
	readonly rule: string;
	readonly at: string;
	readonly wanted: string;
	readonly got: string;
}

/** The sheet an example speaks of. */
export type ExampleSheets = (example: Pick<Example, 'on' | 'answers' | 'without'>) => Sheet;

/** The sheets examples speak of: a named build, made into a sheet once, with answers set and taken away. */
export function exampleSheets({ builds }: Rulebook): ExampleSheets {
	const sheets = new Map(Object.keys(builds).map(name => [name, sheetOf(name, builds[name]!)]));
	return ({ on, answers, without }) => {
		const changed = Object.entries(answers).reduce(
			(sheet, [id, answer]) => withAnswer(sheet, id, answer as Answer),
			sheets.get(on) ?? emptySheet(on),
		);
		return without.reduce((sheet, id) => withAnswer(sheet, id, undefined), changed);
	};
}

/** A named build as a sheet. */
export function sheetOf(name: string, build: NamedBuild): Sheet {
	const sections: Record<string, Record<string, Answer>> = {};
	for (const [id, answer] of Object.entries(build)) {
		const [section, own] = splitId(id);
		(sections[section] ??= {})[own] = answer as Answer;
	}
	return { ...emptySheet(name), answers: sections };
}

/** The graph solved for an example of a rule, as far as the rule reads it. */
export function solveExample(
	rulebook: Rulebook,
	sheets: ExampleSheets,
	graph: Graph,
	rule: Rule,
	example: Example,
): State {
	const given = givenAnswers(sheets(example), rulebook.questions);
	// What is judged of plugs rests on answers alone.
	const reads = rule.each?.over === 'plugs' ? rulebook.questions.map(({ id }) => id) : namesRead(rule);
	const targets = [...reads].filter(name => graph.slotOf.has(name));
	return solve(graph, given, replacedIn(rule, example), targets);
}

/** What an example sets outright. One of a rule on logs speaks of a log that has nothing but what is given. */
function replacedIn({ section }: Rule, { quantities }: Example): Map<string, Outcome> {
	const given = Object.entries(quantities);
	if (section !== 'log') return new Map(given);
	const pulls = Math.max(
		0,
		...given.map(([id, value]) => (perPull.has(id) ? (value as readonly unknown[]).length : 0)),
	);
	const numbers = Array.from({ length: pulls }, (_, index) => String(index + 1));
	const lacking = logQuantities.map(
		({ id }) => [id, perPull.has(id) ? numbers.map(() => undefined) : undefined] as const,
	);
	return new Map<string, Outcome>([...lacking, [pullNumbers, numbers], ...given]);
}

/**
 * The rulebook without the usual values of packs. An example takes an answer away to see what its rule makes of that;
 * a pack that has a usual value for the answer must not stand in.
 */
export function withoutPrefills(rulebook: Rulebook): Rulebook {
	const questions = rulebook.questions.map(question => ({
		...question,
		usual: question.usual.filter(({ from }) => from === undefined),
	}));
	return { ...rulebook, questions };
}

/** Runs the examples of every rule; gives back those that come out wrong. */
export function runExamples(rulebook: Rulebook, graph: Graph, rules: readonly Rule[] = rulebook.rules): WrongExample[] {
	const sheets = exampleSheets(rulebook);
	return rules.flatMap(rule => {
		const judge = new Judge({ ...rulebook, rules: [rule] }, graph.slotOf);
		return rule.examples.flatMap(example => {
			const state = solveExample(rulebook, sheets, graph, rule, example);
			const answered = (id: string) => state.values[slotNamed(graph, id)];
			const verdicts = judge.judge(state, plugsOf(example.plugs, rulebook.vocabulary, answered, 'us'));
			const wanted = example.missing ? `${example.then}, missing ${example.missing.join(' ')}` : example.then;
			const got = outcomeOf(example, verdicts);
			return got === wanted ? [] : [{ rule: rule.id, at: example.at, wanted, got }];
		});
	});
}

/** What an example came to, in the words in which it says what it must come to. */
export function outcomeOf({ item, missing }: Example, verdicts: readonly Verdict[]): string {
	const found = verdicts.find(({ subject }) => item === null || subject === item);
	if (!found) return verdicts.length === 0 ? 'does-not-apply' : `nothing about ${item}`;
	if (found.broke !== null) return `${found.verdict} (${found.broke})`;
	return missing ? `${found.verdict}, missing ${found.missing.join(' ')}` : found.verdict;
}
