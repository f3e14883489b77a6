import { reach } from '../graph/paths.ts';
import { type State, valueIn } from '../graph/solve.ts';
import { type Plugs, plugsOf } from '../plugs/parts.ts';
import { unwantedOn } from '../quantities/wanted.ts';
import type { Verdict } from '../rulebook/judge.ts';
import type { Rule } from '../rulebook/rulebook.ts';
import type { Checked } from '../sheet/check.ts';
import type { SheetProblem } from '../sheet/problem.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { Wording } from '../wording/template.ts';
import { type Audit, type AuditOptions, auditFormat, auditVersion, type Finding, type LimitRung } from './audit.ts';
import { logsOf } from './boost/logs.ts';
import { type NextStep, nextStep, withStep } from './boost/next-step.ts';
import { certaintyOf } from './certainty.ts';
import { findingOf, mayBeListed } from './findings.ts';
import { type Fitted, fitJson, fitOf } from './fitted.ts';
import { sureForGates } from './gate-certainty.ts';
import { ladder, limitSlots } from './limits.ts';
import { loggedValues, stateOf, stillOpen } from './logged.ts';
import type { Model } from './model.ts';
import { nextAnswers } from './next.ts';
import { packsUsed } from './packs.ts';
import { inOrder } from './priority.ts';
import { quantityValues } from './quantity-values.ts';
import { readings } from './readings.ts';
import { courseOf, isSerious, readiness, shownAt } from './stages.ts';
import { isUnproved, judgesReadings, sureEnough, sureEnoughRead } from './unproved.ts';

/** An audit with everything it was made from, for the reports. */
export interface Assessment {
	readonly audit: Audit;
	readonly sheet: Sheet;
	readonly warnings: readonly SheetProblem[];
	readonly model: Model;
	readonly state: State;
	readonly verdicts: readonly Verdict[];
	readonly wording: Wording;
	/** The plugs held against each other; null where none is given. */
	readonly plugs: Plugs | null;
	readonly fits: {
		/** The slots that the fit to a log moved; none without one. */
		readonly moved: ReadonlySet<number>;
		/** The ladder without the fit; null where there is none, or no draws. */
		readonly prior: (() => readonly LimitRung[]) | null;
	};
	/** The next step in boost; null without a log. */
	readonly step: NextStep | null;
}

function stepOf(
	model: Model,
	sheet: Sheet,
	state: State,
	fitted: Fitted | null,
	plugs: Plugs | null,
	units: AuditOptions['units'],
): NextStep | null {
	const logs = logsOf(model, sheet);
	return logs.length === 0 ? null : nextStep({ model, sheet, state, fitted, logs, plugs: () => plugs, units });
}

/** Whether a page shows how sure a verdict is, or a stage hangs on it. */
const isSureShown = ({ verdict, rule }: Verdict): boolean =>
	verdict === 'fails' || (verdict === 'holds' && isSerious(rule));

/** Judges a checked sheet. The same sheet, rules and options give the same audit, anywhere. */
export function assess(model: Model, { sheet, warnings }: Checked, options: AuditOptions): Assessment {
	const { rulebook, judge, quantities } = model;
	const wording = model.wordings[options.units];
	const plain = stateOf(model, sheet);
	const drawn = Math.max(options.draws, options.gateDraws ?? 0) > 0;
	const fitted = options.unfitted || !drawn ? null : fitOf(model, sheet, plain);
	const rests = fitted?.fit.applied ? fitted.fit : null;
	const solved = rests ? stateOf(model, sheet, rests.strays) : plain;
	const plugs = sheet.plugs
		? plugsOf(sheet.plugs, rulebook.vocabulary, id => valueIn(solved, id), options.units)
		: null;
	const step = (options.step ?? drawn) ? stepOf(model, sheet, solved, fitted, plugs, options.units) : null;
	const state = withStep(solved, step);
	const verdicts = judge.judge(state, plugs);
	const points = rests?.points;
	const shown = options.extent === 'page' ? { bandsOf: limitSlots(state, rulebook), only: isSureShown } : {};
	const certainty = certaintyOf(model, sheet, state, verdicts, options.draws, { pointsFor: points, ...shown });
	const sure = sureForGates(model, sheet, state, verdicts, { options, certainty, points });
	const enough = (rule: Rule) => (judgesReadings(rule, model, sheet) ? sureEnoughRead : sureEnough);
	const unwanted = unwantedOn(state, rulebook.questions);
	const course = courseOf(state);
	const older = stillOpen(model, sheet, verdicts);
	const reopened = new Set(older.flatMap(open => open.verdicts.map(({ rule }) => rule)));
	const failing = new Set<string>();
	for (const { verdict, rule } of verdicts) if (verdict === 'fails') failing.add(rule.id);
	const found: Finding[] = [];
	for (let index = 0; index < verdicts.length; index++) {
		const verdict = verdicts[index]!;
		if (reopened.has(verdict.rule)) continue;
		const unproved = isUnproved(verdict, sure[index] ?? null, judge, enough);
		const surely = certainty.sure[index] ?? null;
		const words = options.extent === 'page' && !mayBeListed(verdict, unproved) ? null : wording;
		found.push(findingOf(verdict, state, judge, words, surely, unproved, unwanted, failing));
	}
	for (const open of older) {
		const { sure: surely } = certaintyOf(model, sheet, open.state, open.verdicts, options.draws, { bandsOf: [] });
		for (const [index, verdict] of open.verdicts.entries())
			if (verdict.verdict === 'fails')
				found.push(findingOf(verdict, open.state, judge, wording, surely[index] ?? null));
	}
	const findings = inOrder(found, stage => shownAt(stage, course));
	const audit: Audit = {
		format: auditFormat,
		version: auditVersion,
		sheet: sheet.name,
		date: options.date,
		tool: options.tool,
		rules: model.fingerprint,
		packs: packsUsed(rulebook, findings),
		stages: readiness(findings, course),
		findings,
		quantities: Object.assign(quantityValues(state, model.printed, certainty.band), loggedValues(sheet)),
		limits: ladder(state, quantities, rulebook, certainty.band, options.units),
		next: (options.next ?? options.draws > 0) ? nextAnswers(model, sheet, state, verdicts, unwanted, plugs) : [],
		readings: readings(rulebook, state),
		fit: fitted && { days: fitted.days, ...fitJson(model, fitted) },
		since: null,
	};
	const prior = () =>
		ladder(
			plain,
			quantities,
			rulebook,
			certaintyOf(model, sheet, plain, [], options.draws, { bandsOf: limitSlots(plain, rulebook) }).band,
			options.units,
		);
	const moved = rests ? reach([...rests.strays.keys()], slot => state.graph.readers[slot]!) : new Set<number>();
	const fits = { moved, prior: rests && options.draws > 0 ? prior : null };
	return { audit, sheet, warnings, model, state, verdicts, wording, plugs, step, fits };
}
