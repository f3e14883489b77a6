import { givenAnswers } from '../quantities/given.ts';
import type { Graph } from '../quantities/graph.ts';
import { type State, solve } from '../quantities/pass.ts';
import type { Answer, Sheet } from '../sheet/sheet.ts';
import { emptySheet, withAnswer } from '../sheet/sheet.ts';
import { Judge } from './judge.ts';
import type { Example, Rule, Rulebook } from './rulebook.ts';

/** An example that came out otherwise than it says. */
export interface WrongExample {
	readonly rule: string;
	readonly at: string;
	readonly wanted: string;
	readonly got: string;
}

/** The sheet an example speaks of: a named build with answers set and taken away. */
export function sheetOf(rulebook: Rulebook, example: Example): Sheet {
	const answers = { ...rulebook.builds[example.on], ...example.answers };
	let sheet = emptySheet(example.on);
	for (const [id, answer] of Object.entries(answers)) {
		if (!example.without.includes(id)) sheet = withAnswer(sheet, id, answer as Answer);
	}
	return sheet;
}

/** The graph solved for an example. */
export function solveExample(rulebook: Rulebook, graph: Graph, example: Example): State {
	const given = givenAnswers(sheetOf(rulebook, example), rulebook.questions);
	return solve(graph, given, new Map(Object.entries(example.quantities)));
}

/** Runs the examples of every rule; gives back those that come out wrong. */
export function runExamples(rulebook: Rulebook, graph: Graph, rules: readonly Rule[] = rulebook.rules): WrongExample[] {
	const states = new Map<string, State>();
	return rules.flatMap(rule => {
		const judge = new Judge({ ...rulebook, rules: [rule] }, graph.slotOf);
		return rule.examples.flatMap(example => {
			const { on, answers, quantities, without } = example;
			const key = JSON.stringify([on, answers, quantities, without]);
			const state = states.get(key) ?? solveExample(rulebook, graph, example);
			states.set(key, state);
			const verdicts = judge.judge(state);
			const found = verdicts.find(({ subject }) => example.item === null || subject === example.item);
			const got = found?.verdict ?? (verdicts.length === 0 ? 'does-not-apply' : `nothing about ${example.item}`);
			const wanted = example.missing ? `${example.then}, missing ${example.missing.join(' ')}` : example.then;
			const told = example.missing ? `${got}, missing ${(found?.missing ?? []).join(' ')}` : got;
			return told === wanted
				? []
				: [{ rule: rule.id, at: example.at, wanted, got: found?.broke ? `${told} (${found.broke})` : told }];
		});
	});
}
