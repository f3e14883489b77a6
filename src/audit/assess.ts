import { solveAgain } from '../quantities/again.ts';
import { givenAnswers } from '../quantities/given.ts';
import { type State, solve } from '../quantities/pass.ts';
import { slotNamed } from '../quantities/replace.ts';
import type { Verdict } from '../rulebook/judge.ts';
import type { Checked } from '../sheet/check.ts';
import type { SheetProblem } from '../sheet/problem.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { type Audit, type AuditOptions, auditFormat, auditVersion } from './audit.ts';
import { certaintyOf } from './certainty.ts';
import type { Earlier, RuleFindings } from './earlier.ts';
import { findingOf } from './findings.ts';
import { ladder } from './limits.ts';
import type { Model } from './model.ts';
import { nextAnswers } from './next.ts';
import { inOrder } from './priority.ts';
import { quantityValues } from './quantity-values.ts';
import { readings } from './readings.ts';
import { readiness } from './stages.ts';
import type { Wording } from './words.ts';

/** An audit with everything it was made from, for the reports. */
export interface Assessment {
	readonly audit: Audit;
	readonly sheet: Sheet;
	readonly warnings: readonly SheetProblem[];
	readonly model: Model;
	readonly state: State;
	readonly verdicts: readonly Verdict[];
	readonly wording: Wording;
	/** Rule by rule in the order of the rulebook; null with draws, which make every finding another one. */
	readonly byRule: readonly RuleFindings[] | null;
}

/**
 * Judges a checked sheet. The same sheet, rules and options give the same audit, anywhere.
 *
 * `before` is the assessment of another sheet by the same model. It changes nothing but the time: without draws, whatever
 * rests on nothing that moved since then is taken from it.
 */
export function assess(
	model: Model,
	{ sheet, warnings }: Checked,
	options: AuditOptions,
	before: Assessment | null = null,
): Assessment {
	const { rulebook, graph, judge, quantities } = model;
	const wording = model.wordings[options.units];
	const given = givenAnswers(sheet, rulebook.questions);
	const earlier: Earlier | null =
		before?.byRule && before.wording === wording && options.draws === 0
			? { ...solveAgain(before.state, given), audit: before.audit, byRule: before.byRule }
			: null;
	const state = earlier?.state ?? solve(graph, given);
	const feeling = earlier && judge.feeling(earlier.moved);
	const kept = (place: number) => (feeling?.[place] === 0 ? earlier!.byRule[place]! : null);
	const judged = rulebook.rules.map((_, place) => kept(place)?.verdicts ?? judge.judgeRule(place, state));
	const verdicts = inOne(judged);
	const certainty = certaintyOf(sheet, state, judge, verdicts, options.draws);
	let index = 0;
	const byRule = judged.map((own, place) => ({
		verdicts: own,
		findings:
			kept(place)?.findings ??
			own.map(verdict => findingOf(verdict, state, judge, wording, certainty.sure[index++] ?? null)),
	}));
	const findings = inOrder(inOne(byRule.map(rule => rule.findings)));
	const unboosted = state.values[slotNamed(graph, 'boost.kind')] === 'none';
	const audit: Audit = {
		format: auditFormat,
		version: auditVersion,
		sheet: sheet.name,
		date: options.date,
		tool: options.tool,
		rules: model.fingerprint,
		stages: readiness(findings, unboosted),
		findings,
		quantities: quantityValues(state, quantities, certainty.band, earlier),
		limits: ladder(state, quantities, rulebook, certainty.band, earlier),
		next: (options.next ?? options.draws > 0) ? nextAnswers(model, sheet, state, verdicts) : [],
		readings: readings(state),
		since: null,
	};
	return { audit, sheet, warnings, model, state, verdicts, wording, byRule: options.draws === 0 ? byRule : null };
}

/** Many short lists as one: a loop takes a tenth of the time of `flat`. */
function inOne<T>(lists: readonly (readonly T[])[]): T[] {
	const all: T[] = [];
	for (const list of lists) for (const item of list) all.push(item);
	return all;
}
