import { solve } from '../../src/graph/solve.ts';
import type { Analysis } from '../../src/log/analyze.ts';
import { carOf } from '../../src/log/car-of.ts';
import { resultsOf, valuesOf } from '../../src/log/results.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import type { Verdict } from '../../src/rulebook/judge.ts';
import type { Sheet } from '../../src/sheet/sheet.ts';
import { analyzed } from './analyzed.ts';
import { buildSheet, testModel } from './model.ts';
import type { Drive } from './simulated-drive.ts';

/** A drive judged by the rules on logs, in the car of a named build. */
export function judgedLog(
	drive: Pick<Drive, 'time' | 'channels'>,
	sheet: Sheet = buildSheet('boosted'),
): { analysis: Analysis; verdicts: Verdict[] } {
	const { graph, rulebook, judge } = testModel();
	const given = givenAnswers(sheet, rulebook.questions);
	const analysis = analyzed(drive, carOf(solve(graph, given)));
	const state = solve(graph, given, valuesOf(resultsOf(analysis)));
	return { analysis, verdicts: judge.judge(state).filter(({ rule }) => rule.section === 'log') };
}

/** Ids of the rules that came out so, each once. */
export const rulesThat = (verdicts: readonly Verdict[], word: Verdict['verdict']): string[] => [
	...new Set(verdicts.filter(({ verdict }) => verdict === word).map(({ rule }) => rule.id)),
];
