import { readByFit } from '../fit/car-model.ts';
import type { Steps } from '../fit/steps.ts';
import { reach } from '../graph/paths.ts';
import { type State, valueIn } from '../graph/solve.ts';
import type { Analysis } from '../log/analysis.ts';
import type { Recording } from '../log/block.ts';
import type { OverviewPoint } from '../log/overview.ts';
import { recordedPoints } from '../log/recorded-points.ts';
import { resultsOf } from '../log/results.ts';
import { plugsOf } from '../plugs/parts.ts';
import type { Checked } from '../sheet/check.ts';
import type { Wording } from '../wording/template.ts';
import type { AuditOptions } from './audit.ts';
import { logsOf } from './boost/logs.ts';
import { nextStep } from './boost/next-step.ts';
import { certaintyOf } from './certainty.ts';
import { type Expected, expectedIn } from './expected.ts';
import { findingOf } from './findings.ts';
import { countingLogs, fitJson, fitTo } from './fitted.ts';
import { ladder, limitSlots } from './limits.ts';
import { answersOf, withLogged } from './log-answers.ts';
import { channelsOf, type LogFile, type LogJson } from './log-json.ts';
import { stateWithLog, withFigures } from './logged.ts';
import type { Model } from './model.ts';
import { inOrder } from './priority.ts';

/** A judged log with what its report is made from. */
export interface LogReport {
	readonly json: LogJson;
	/** What could not be read. */
	readonly faults: readonly string[];
	readonly analysis: Analysis;
	/** The answers that its figures were worked out with. */
	readonly rests_on: readonly string[];
	readonly overview: readonly OverviewPoint[];
	/** What the answers let one expect in each pull; empty without draws. Worked out when it is first asked for. */
	readonly expected: () => Expected;
	/** By channel where the sheet has it at full load, SI. */
	readonly targets: ReadonlyMap<string, number>;
	readonly wording: Wording;
	readonly model: Model;
}

/** A log that was gone through, in the car of a sheet: of what was `solved` of it the log's quantities `read` some. */
export interface ReadLog {
	readonly file: LogFile;
	readonly recording: Omit<Recording, 'blocks' | 'columns'>;
	readonly analysis: Analysis;
	readonly overview: readonly OverviewPoint[];
	readonly read: ReadonlySet<string>;
	readonly solved: State;
}

/** As for an audit. */
export interface LogOptions extends Pick<AuditOptions, 'date' | 'tool' | 'units' | 'draws'> {
	/** Whether the model is fitted to the log; left out: when there are draws. */
	readonly fit?: boolean;
}

/**
 * Judges what a log came to by the rules on logs. Yields the share of the fit that is done; told to stop there, it goes on
 * without one, and notes that.
 */
export function* reportLog(
	model: Model,
	{ sheet }: Checked,
	{ file, recording, analysis, overview, read, solved }: ReadLog,
	{ date, tool, units, draws, fit: fits = draws > 0 }: LogOptions,
): Generator<number, LogReport, 'stop' | undefined> {
	const { totals } = recording;
	const { judge } = model;
	const wording = model.wordings[units];
	const quantities = resultsOf(analysis);
	const state = withFigures(model, solved, quantities);
	const verdicts = judge.judge(state, null, ({ section }) => section === 'log');
	const bandsOf = limitSlots(state, model.rulebook);
	const certainty = certaintyOf(model, sheet, state, verdicts, draws, { bandsOf });
	const findings = verdicts.flatMap((verdict, at) =>
		findingOf(verdict, state, judge, wording, certainty.sure[at] ?? null),
	);
	const answers = answersOf(model, sheet, state, quantities);
	const taken = answers.filter(({ by_hand }) => !by_hand);
	const after = withLogged(sheet, taken, { name: file.name, date }).sheet;
	const plain = stateWithLog(model, after, null);
	const unfitted = withFigures(model, plain, quantities);
	const earlier = countingLogs(model, after).filter(({ sha256 }) => sha256 !== file.sha256);
	const logs = [...earlier, { ...file, points: recordedPoints(analysis.points), quantities }];
	const stopped = fits ? yield* untilStopped(fitTo(model, after, unfitted, logs)) : null;
	const fitted = stopped === 'stopped' ? null : stopped;
	const fit = fitted?.fit;
	const stateAfter = fit?.applied ? stateWithLog(model, after, quantities, fit.strays) : unfitted;
	const step = nextStep({
		model,
		sheet: after,
		plain,
		state: stateAfter,
		fitted: draws === 0 ? null : fitted,
		logs: [
			...logsOf(model, after).filter(({ sha256 }) => sha256 !== file.sha256),
			{ name: file.name, quantities, changed: [] },
		],
		plugs: () => plugsOf(after.plugs, model.rulebook.vocabulary, id => valueIn(stateAfter, id), units),
		units,
	});
	const json: LogJson = {
		format: 'swap-audit/log',
		version: 1,
		sheet: sheet.name,
		date,
		tool,
		rules: model.fingerprint,
		file: { ...file, rows: totals.rows, unread: totals.unread, seconds: analysis.seconds, rate: analysis.rate },
		channels: channelsOf(recording, analysis),
		unused: recording.unused,
		episodes: analysis.episodes,
		quantities,
		findings: inOrder(findings),
		answers,
		fit: fitted && fitJson(model, fitted),
		limits: {
			before: ladder(state, model.quantities, model.rulebook, certainty.band, units),
			after: ladder(
				stateAfter,
				model.quantities,
				model.rulebook,
				certaintyOf(model, after, stateAfter, [], draws, { pointsFor: fit?.applied ? fit.points : undefined, bandsOf })
					.band,
				units,
			),
		},
		boost_steps: step.steps,
		boost_steps_refused: step.refused,
		notes: [
			...recording.notes,
			...(analysis.pulse === null ? [] : [analysis.pulse]),
			...(stopped === 'stopped' ? ['The fit was stopped: this report is without it.'] : []),
		],
	};
	return {
		json,
		faults: totals.faults,
		analysis,
		rests_on: answersBehind(model, new Set([...read, ...(fit ? readByFit(model.graph) : [])])),
		overview,
		expected: once(() => (draws === 0 ? new Map() : expectedIn(model, sheet, state, analysis))),
		targets: targetsIn(state),
		wording,
		model,
	};
}

function* untilStopped<T>(steps: Steps<T>): Generator<number, T | 'stopped', 'stop' | undefined> {
	for (;;) {
		const { done, value } = steps.next();
		if (done) return value;
		if ((yield value) === 'stop') return 'stopped';
	}
}

function targetsIn(state: State): Map<string, number> {
	const ids = { boost: 'boost.target', spark_advance: 'ignition.full_load_advance' };
	return new Map(
		Object.entries(ids).flatMap(([channel, id]) => {
			const value = valueIn(state, id);
			return typeof value === 'number' ? [[channel, value] as const] : [];
		}),
	);
}

function once<T>(make: () => T): () => T {
	let made: { readonly of: T } | undefined;
	return () => (made ??= { of: make() }).of;
}

/** The answers that some names of the model are made from. */
function answersBehind({ graph, rulebook }: Model, names: ReadonlySet<string>): string[] {
	const slots = [...names].flatMap(name => graph.slotOf.get(name) ?? []);
	const behind = reach(slots, slot => graph.feeds[slot]!);
	return rulebook.questions.map(({ id }) => id).filter(id => behind.has(graph.slotOf.get(id)!));
}

/** Channels that have values which they can never have: a column that was not taken for it, or over 1 % of the readings. */
export function impossibleOf({ totals }: Pick<Recording, 'totals'>): string[] {
	return [...totals.impossible].filter(([, count]) => count === 0 || count > totals.rows / 100).map(([id]) => id);
}
