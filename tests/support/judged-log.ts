import { type LoggedState, stateOf, withFigures } from '../../src/audit/logged.ts';
import type { Analysis } from '../../src/log/analysis.ts';
import { carOf } from '../../src/log/car-of.ts';
import { resultsOf } from '../../src/log/results.ts';
import { Judge, type Verdict } from '../../src/rulebook/judge.ts';
import type { Sheet } from '../../src/sheet/sheet.ts';
import { analyzed } from './analyzed.ts';
import { buildSheet, testModel } from './model.ts';
import type { Drive } from './simulated-drive.ts';

const solved = new WeakMap<Sheet, LoggedState>();

/** A sheet solved once, however many drives are judged in its car. */
function solvedOnce(sheet: Sheet): LoggedState {
	const known = solved.get(sheet) ?? stateOf(testModel(), sheet);
	solved.set(sheet, known);
	return known;
}

let judge: Judge | undefined;

/** Of all rules those on logs. */
function judgeOfLogs(): Judge {
	const { rulebook, graph } = testModel();
	judge ??= new Judge({ ...rulebook, rules: rulebook.rules.filter(({ section }) => section === 'log') }, graph.slotOf);
	return judge;
}

/** A drive judged by the rules on logs, in the car of a named build. */
export function judgedLog(
	drive: Pick<Drive, 'time' | 'channels'>,
	sheet: Sheet = buildSheet('boosted'),
): { analysis: Analysis; verdicts: Verdict[] } {
	const model = testModel();
	const state = solvedOnce(sheet);
	const analysis = analyzed(drive, carOf(state));
	return { analysis, verdicts: judgeOfLogs().judge(withFigures(model, state, resultsOf(analysis))) };
}

/** Ids of the rules that came out so, each once. */
export const rulesThat = (verdicts: readonly Verdict[], word: Verdict['verdict']): string[] => [
	...new Set(verdicts.filter(({ verdict }) => verdict === word).map(({ rule }) => rule.id)),
];
