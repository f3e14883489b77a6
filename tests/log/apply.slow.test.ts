import { describe, expect, test } from 'vitest';
import { assess } from '../../src/audit/assess.ts';
import { certaintyOf } from '../../src/audit/certainty.ts';
import { compare } from '../../src/audit/compare.ts';
import { withLogged } from '../../src/audit/log-answers.ts';
import { recordOfLog, withLog } from '../../src/audit/log-record.ts';
import type { LogReport } from '../../src/audit/log-report.ts';
import { stateOf, withFigures } from '../../src/audit/logged.ts';
import { recordOf } from '../../src/audit/record.ts';
import { isUnproved, judgesReadings, sureEnoughRead } from '../../src/audit/unproved.ts';
import { solve } from '../../src/graph/solve.ts';
import { valuesOf } from '../../src/log/results.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import type { Verdict } from '../../src/rulebook/judge.ts';
import { checkSheet } from '../../src/sheet/check.ts';
import { parseSheet } from '../../src/sheet/parse.ts';
import { changedSince } from '../../src/sheet/rests-on.ts';
import { type Answer, answerTo, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { writeSheet } from '../../src/sheet/write.ts';
import { loggedReport } from '../support/logged-report.ts';
import { buildSheet, testModel } from '../support/model.ts';
import { type Driven, simulateDrive } from '../support/simulated-drive.ts';

const model = testModel();
const psi = 6894.757;

/** The boosted build without what a log may settle: as it is before the first drive. */
const undriven = model.rulebook.questions
	.filter(({ logged }) => logged !== null)
	.reduce((sheet, { id }) => withAnswer(sheet, id, undefined), buildSheet('boosted'));

/** The sheet after the answers of a drive were taken. */
function applied(sheet: Sheet, report: LogReport): Sheet {
	const { file, date, answers } = report.json;
	const logged = withLogged(
		sheet,
		answers.filter(({ by_hand }) => !by_hand),
		{ name: file.name, date },
	);
	return withLog(logged.sheet, recordOfLog(report, logged.sheet, logged.answers));
}

const driven = (sheet: Sheet, faults: Driven['faults'] = {}, name = 'drive.csv', rate = 12) =>
	loggedReport(simulateDrive({ faults, cruise: 30, idle: 20, rate }), sheet, name);

const audit = (sheet: Sheet) =>
	assess(model, { sheet, warnings: [] }, { date: '2026-05-02', units: 'us', tool: 'test', draws: 0 });

// Stumbles are seen from 20 rows a second on.
const sound = driven(undriven, {}, 'drive.csv', 25);
const soundSheet = applied(undriven, sound);
const verdictsOf = (sheet: Sheet, rule: string) =>
	audit(sheet).audit.findings.flatMap(one => (one.rule === rule ? [one.verdict] : []));
const ready = (sheet: Sheet, stage: string) => audit(sheet).audit.stages.find(one => one.stage === stage)!.ready;

describe('answers that a log settles', () => {
	test('are all that the drive shows, in the units of the sheet, with spread and note', () => {
		const asked = model.rulebook.questions.flatMap(({ id, logged }) => (logged === null ? [] : [id]));
		expect(asked).toHaveLength(17);
		expect(sound.json.answers.map(({ answer }) => answer).sort()).toEqual(asked.sort());
		const peak = answerTo(soundSheet, 'boost.logged_peak')!;
		expect(peak).toMatchObject({ unit: 'psi', known: 'measured', note: 'from the log drive.csv of 2026-05-01' });
		expect(peak.value).toBeCloseTo(8, 0);
		// 1 % of the manifold's absolute pressure, 22.4 psi, and nine of ten readings within 1.645 deviations.
		expect(peak.spread).toBeCloseTo(0.01 * 22.4 * 1.645, 1);
		expect(answerTo(soundSheet, 'ignition.knock_seen')).toMatchObject({ value: 'clean' });
		expect(checkSheet(parseSheet(writeSheet(soundSheet)), model.rulebook.questions).sheet).toEqual(soundSheet);
	});

	test('take the worst pull', () => {
		const quantities = sound.json.quantities as unknown as Record<string, { value: number }[]>;
		const of = (id: string) => quantities[id]!.map(({ value }) => value);
		const value = (id: string) => answerTo(soundSheet, id)!.value as number;
		expect(of('log.rail_at_full')).toHaveLength(2);
		expect(value('fuel.pressure_under_load')).toBeCloseTo(Math.min(...of('log.rail_at_full')) / psi, 1);
		expect(value('boost.lambda_logged')).toBeCloseTo(Math.max(...of('log.lambda_leanest')), 3);
		expect(value('injectors.duty_logged')).toBeCloseTo(100 * Math.max(...of('log.duty_peak')), 1);
	});

	test('leave what was measured by hand, but not what an earlier log wrote', () => {
		const byHand = withAnswer(soundSheet, 'boost.logged_peak', { value: 7.5, unit: 'psi', known: 'measured' });
		const later = loggedReport(simulateDrive({ seed: 5, rate: 12 }), byHand, 'later.csv');
		const hands = later.json.answers.filter(({ by_hand }) => by_hand).map(({ answer }) => answer);
		expect(hands).toEqual(['boost.logged_peak']);
		expect(later.json.answers.find(({ answer }) => answer === 'boost.logged_peak')?.before).toMatchObject({
			value: 7.5,
		});
		expect(answerTo(applied(byHand, later), 'fuel.pressure_idle')?.note).toContain('later.csv');
	});

	test('a clean log does not overrule somebody who heard knock, and a log with knock does overrule a clean sheet', () => {
		const hands = (value: string, faults: Driven['faults']) =>
			driven(withAnswer(undriven, 'ignition.knock_seen', { value }), faults).json.answers.find(
				({ answer }) => answer === 'ignition.knock_seen',
			);
		expect(hands('some', {})).toMatchObject({ value: 'clean', by_hand: true });
		expect(hands('clean', { knock: { retard: 3, readings: 3 } })).toMatchObject({ value: 'some', by_hand: false });
	});

	test('without a sensor that could hear it, or with advance taken out, no log is clean of knock', () => {
		const settles = (sheet: Sheet, faults: Driven['faults']) =>
			driven(sheet, faults).json.answers.some(({ answer }) => answer === 'ignition.knock_seen');
		expect(settles(undriven, {})).toBe(true);
		expect(settles(withAnswer(undriven, 'sensors.knock', { value: 'not-fitted' }), {})).toBe(false);
		expect(settles(undriven, { advance: -4 })).toBe(false);
	});

	test('move the limits that they feed, stated before and after', () => {
		const { before, after } = driven(undriven, { injectorFlow: 0.8 }).json.limits;
		expect(after.map(({ limit }) => limit).sort()).toEqual(before.map(({ limit }) => limit).sort());
		expect(after).not.toEqual(before);
	});

	test('say which lines turn with them', () => {
		const unread = withAnswer(buildSheet('boosted'), 'fuel.pressure_under_load', undefined);
		const short = driven(unread, { railFalls: 14 * psi });
		const rail = short.json.answers.find(({ answer }) => answer === 'fuel.pressure_under_load')!;
		expect(rail.changes).toContain('fuel.pump-side-falls-behind');
	});
});

describe('the logs of a sheet in its audit', () => {
	const lean = driven(undriven, { leanOnTop: 0.08 }, 'lean.csv');
	const leanSheet = applied(undriven, lean);

	test('what the newest found is in the list, and holds its stage up', () => {
		expect(verdictsOf(soundSheet, 'log.lean-under-load')).toEqual(['holds', 'holds']);
		expect(verdictsOf(leanSheet, 'log.lean-under-load')).toEqual(['fails', 'fails']);
		expect(ready(leanSheet, 'boost')).toBe(false);
		expect(audit(undriven).audit.findings.some(one => one.section === 'log' && one.verdict !== 'does-not-apply')).toBe(
			false,
		);
	});

	test('a log that lacks the channel closes nothing, and holds nothing up by itself; one that holds the rule closes it', () => {
		const blind = driven(leanSheet, { without: ['lambda_1', 'lambda_2'] }, 'blind.csv');
		const blindSheet = applied(leanSheet, blind);
		expect(verdictsOf(blindSheet, 'log.lean-under-load')).toEqual(['fails', 'fails']);
		expect(ready(blindSheet, 'boost')).toBe(false);
		const again = applied(blindSheet, driven(blindSheet, {}, 'again.csv'));
		expect(verdictsOf(again, 'log.lean-under-load')).toEqual(['holds', 'holds']);
		expect(verdictsOf(applied(soundSheet, blind), 'log.lean-under-load')).toEqual(['cannot-tell', 'cannot-tell']);
		const alone = audit(applied(soundSheet, blind)).audit;
		expect(
			alone.findings.filter(one => one.section === 'log' && one.verdict === 'cannot-tell' && !one.prove_during),
		).toEqual([]);
	});

	test('the figures of the newest log are in the audit, with their bands and what they lack', () => {
		const { quantities } = audit(soundSheet).audit;
		expect(quantities['log.idle_speed']).toMatchObject({ unit: 'rpm', missing: [] });
		expect(quantities['log.boost_peak']!.value).toHaveLength(2);
		const { value, missing } = quantities['log.coolant_plateau']!;
		expect(value === null).toBe(missing.length > 0);
	});

	test('a recheck shows of the log and what it settled', () => {
		const before = recordOf(audit(leanSheet));
		const after = audit(applied(leanSheet, driven(leanSheet, {}, 'mended.csv')));
		const since = compare(before, after);
		expect(since.logs.map(({ name }) => name)).toEqual(['mended.csv']);
		expect(since.logs[0]!.answers).toContain('boost.lambda_logged');
		expect(since.changes).toContainEqual({
			rule: 'log.lean-under-load',
			subject: '1',
			change: 'settled',
			by: 'answers',
		});
	});

	test('without boost a pull belongs to driving: what it shows holds that up', () => {
		const unboosted = buildSheet('unboosted');
		const lean = loggedReport(simulateDrive({ boosted: false, rate: 12, faults: { leanOnTop: 0.1 } }), unboosted);
		expect(lean.json.findings.find(({ rule }) => rule === 'log.lean-under-load')).toMatchObject({
			verdict: 'fails',
			stage: 'move',
		});
		expect(ready(unboosted, 'move')).toBe(true);
		expect(ready(applied(unboosted, lean), 'move')).toBe(false);
	});

	test('the same file twice is one record; the newest stands last', () => {
		const twice = applied(applied(soundSheet, lean), sound);
		expect(twice.logs!.map(({ name }) => name)).toEqual(['lean.csv', 'drive.csv']);
	});
});

test('the figures of a log go into a solved sheet as if it were solved with them: nothing is made from them', () => {
	const quantities = sound.json.quantities;
	const { graph } = model;
	const [into, anew] = [
		withFigures(model, stateOf(model, undriven), quantities),
		solve(graph, givenAnswers(undriven, model.rulebook.questions), valuesOf(quantities)),
	];
	const plain = (values: readonly unknown[]) => values.map(value => JSON.stringify(value));
	expect(plain(into.values)).toEqual(plain(anew.values));
	expect(into.assumed).toEqual(anew.assumed);
	const figures = Object.keys(quantities).map(id => graph.slotOf.get(id)!);
	expect(figures.filter(slot => graph.readers[slot]!.length > 0)).toEqual([]);
});

describe('what the sensors are off', () => {
	/** How sure the first verdict of a rule is; in many draws, so that the sensors are held against the table and not chance. */
	const sureOf = (sheet: Sheet, rule: string): number => {
		const state = stateOf(model, sheet);
		const verdicts = model.judge.judge(state);
		const only = (verdict: Verdict) => verdict.rule.id === rule;
		return certaintyOf(model, sheet, state, verdicts, 3200, { only }).sure[verdicts.findIndex(only)]!;
	};
	const [record] = soundSheet.logs!;
	const chargeAt = (kelvin: number): Sheet => {
		const figure = { value: kelvin, unit: 'K', low: kelvin - 3 * 1.6449, high: kelvin + 3 * 1.6449, missing: [] };
		const quantities = { ...record!.quantities, 'log.charge_temp_placed': [1, 2].map(pull => ({ pull, ...figure })) };
		return { ...soundSheet, logs: [{ ...record!, quantities }] };
	};
	/** Battery 14 V, pump 0.35 V under it, as the log wrote both or as somebody typed both. */
	const volts = (byLog: boolean): Sheet => {
		const of = (value: number): Answer => ({ value, unit: 'V', known: 'measured', spread: 1.6449 * 0.01166 * value });
		const answers = { 'charging.voltage_running': of(14), 'fuel.pump_voltage': of(13.65) };
		const sheet = Object.entries(answers).reduce((so, [id, answer]) => withAnswer(so, id, answer), soundSheet);
		return { ...sheet, logs: [{ ...record!, answers: byLog ? answers : {} }] };
	};

	// Shares under the normal curve (any handbook's table): 0.841 to one deviation, 0.899 to 1.28, 0.745 to 0.66.
	test('make a reading one deviation under its limit as sure as that', () => {
		expect(sureOf(chargeAt(353.15 - 3), 'log.charge-hot')).toBeCloseTo(0.841, 1.5);
		expect(sureOf(soundSheet, 'log.no-pull')).toBe(1);
	});

	test('cancel between battery and pump on one instrument; two hands with two meters have no such luck', () => {
		// 0.15 V over the limit: inputs 0.6 % off each other are 0.12 V, instruments 1.2 % off 0.23 V.
		expect(sureOf(volts(true), 'fuel.pump-volts-low')).toBeCloseTo(0.899, 1.5);
		expect(sureOf(volts(false), 'fuel.pump-volts-low')).toBeCloseTo(0.745, 1.5);
	});

	test('leave every line proved that a sound drive holds', () => {
		const options = { date: '2026-05-02', units: 'us', tool: 'test', draws: 200, unfitted: true, next: false } as const;
		const { findings } = assess(model, { sheet: soundSheet, warnings: [] }, options).audit;
		const held = findings.filter(({ section, verdict }) => section === 'log' && verdict === 'holds');
		expect(held.length).toBeGreaterThan(20);
		const read = [...held, ...findings.filter(({ rule }) => rule === 'boost.lambda-logged-lean')];
		expect(read.filter(({ unproved }) => unproved)).toEqual([]);
		expect(held.some(({ sure }) => sure! < 1)).toBe(true);
	});

	test('leave a reading in doubt that lies so near that every third sensor would say otherwise', () => {
		const state = stateOf(model, soundSheet);
		const lean = model.judge.judge(state).find(({ rule }) => rule.id === 'log.lean-under-load')!;
		const unproved = (sure: number) => isUnproved(lean, sure, model.judge, () => sureEnoughRead);
		expect(judgesReadings(lean.rule, model, soundSheet)).toBe(true);
		expect([unproved(0.6), unproved(0.75)]).toEqual([true, false]);
		expect(isUnproved(lean, 0.75, model.judge)).toBe(true);
	});
});

describe('what a log rests on', () => {
	const [record] = soundSheet.logs!;
	const { questions } = model.rulebook;
	const changed = (id: string, answer: Answer | undefined) =>
		changedSince(record!.rests_on, withAnswer(soundSheet, id, answer), questions);

	test('stands while its answers stand, in whatever unit and however known', () => {
		expect(changedSince(record!.rests_on, soundSheet, questions)).toEqual([]);
		expect(changed('fuel.pressure', { value: 299.9219, unit: 'kPa', known: 'measured' })).toEqual([]);
		expect(changed('ignition.gap', { value: 0.02, unit: 'in' })).toEqual([]);
	});

	test('an answer that changes, goes or comes is named', () => {
		expect(changed('fuel.pressure', { value: 50, unit: 'psi' })).toEqual(['fuel.pressure']);
		expect(changed('fuel.pressure', undefined)).toEqual(['fuel.pressure']);
		expect(changed('injectors.rated_flow', { known: 'not-known' })).toEqual(['injectors.rated_flow']);
	});
});
