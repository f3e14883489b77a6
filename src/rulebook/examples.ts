import type { Outcome } from '../expressions/tree.ts';
import { type Graph, slotNamed } from '../graph/graph.ts';
import { type State, solve } from '../graph/solve.ts';
import { logQuantities } from '../log/all.ts';
import { perPull, pullNumbers } from '../log/quantities.ts';
import { plugsOf } from '../plugs/parts.ts';
import { givenAnswers } from '../quantities/from-sheet.ts';
import { type Answer, emptySheet, type Sheet, splitId } from '../sheet/sheet.ts';
import { Judge, type Verdict } from './judge.ts';
import { namesRead } from './reads.ts';
import type { Example, Rule, Rulebook } from './rulebook.ts';

/** An example that came out otherwise than it says. */
export interface WrongExample {
	readonly rule: string;
	readonly at: string;
	readonly wanted: string;
	readonly got: string;
}

/** The sheet an example speaks of: a named build with answers set and taken away. */
export function sheetOf(rulebook: Rulebook, example: Pick<Example, 'on' | 'answers' | 'without'>): Sheet {
	const answers = { ...rulebook.builds[example.on], ...example.answers };
	const sections: Record<string, Record<string, Answer>> = {};
	for (const [id, answer] of Object.entries(answers)) {
		const [section, name] = splitId(id);
		if (!example.without.includes(id)) (sections[section] ??= {})[name] = answer as Answer;
	}
	return { ...emptySheet(example.on), answers: sections };
}

/** The graph solved for an example of a rule, as far as the rule reads it. */
export function solveExample(rulebook: Rulebook, graph: Graph, rule: Rule, example: Example): State {
	const given = givenAnswers(sheetOf(rulebook, example), rulebook.questions);
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
	return rules.flatMap(rule => {
		const judge = new Judge({ ...rulebook, rules: [rule] }, graph.slotOf);
		return rule.examples.flatMap(example => {
			const state = solveExample(rulebook, graph, rule, example);
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
