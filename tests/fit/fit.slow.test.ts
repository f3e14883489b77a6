import { describe, expect, test } from 'vitest';
import { assess } from '../../src/audit/assess.ts';
import { logsOf } from '../../src/audit/boost/logs.ts';
import { countingLogs } from '../../src/audit/fitted.ts';
import { recordOfLog, withLog } from '../../src/audit/log-record.ts';
import { ladder } from '../../src/report/compose/ladder.ts';
import { composeFit } from '../../src/report/log/fit.ts';
import { drawLadder } from '../../src/report/pictures/ladder.ts';
import { withAnswer } from '../../src/sheet/sheet.ts';
import { loggedReport } from '../support/logged-report.ts';
import { buildSheet, testModel } from '../support/model.ts';
import { simulateDrive } from '../support/simulated-drive.ts';

const sheet = buildSheet('boosted');
const drive = simulateDrive({ seed: 3, pulls: 1, cruise: 20 });
const fitted = (given: Pick<typeof drive, 'time' | 'channels'>, of = sheet) =>
	loggedReport(given, of, 'drive.csv', '2026-05-01', 60);
const right = fitted(drive);

/** The drive with one channel changed. */
const changedDrive = (channel: string, change: (value: number) => number) => ({
	...drive,
	channels: new Map([...drive.channels].map(([id, column]) => [id, id === channel ? column.map(change) : column])),
});

describe('the model fitted to a simulated drive of a car that is as its sheet says', () => {
	// That it gives the same again is seen by the report of the demo's log (tests/golden/demo), whose figures rest on its fit.
	test('it applies, and is worth 400 draws', () => {
		expect(right.json.fit).toMatchObject({ applied: true, misfit: null });
		expect(right.json.fit!.effective).toBeGreaterThanOrEqual(400);
	});

	test('each limit says what leaves it open, three inputs at most', () => {
		const open = right.json.fit!.unsettled;
		expect(open.find(({ limit }) => limit === 'sensors.meter_boost_limit')!.inputs).toContain('sensors.meter_curve');
		for (const { inputs } of open) expect(inputs.length).toBeLessThanOrEqual(3);
	});

	test('what was measured narrows the limits that rest on it', () => {
		const width = (limits: typeof right.json.limits.before, id: string) => {
			const { low, high } = limits.find(({ limit }) => limit === id)!;
			return high! - low!;
		};
		const { before, after } = right.json.limits;
		for (const id of ['sensors.meter_boost_limit', 'injectors.boost_limit'])
			expect(width(after, id)).toBeLessThan(width(before, id));
	});

	test('the report shows it in words', () => {
		expect(JSON.stringify(composeFit(right))).toMatch(/Fitted to this log.*Worth \d+ independent draws/);
	});

	test('of each sensor that was compared it says from which error on it would show', () => {
		const detects = new Map(right.json.fit!.detects.map(({ id, least }) => [id, least]));
		// A rail sensor that is off by 0.1 bar passes, one by 1.5 bar does not.
		expect(detects.get('sensor: fuel_pressure')!).toBeGreaterThan(10_000);
		expect(detects.get('sensor: fuel_pressure')!).toBeLessThan(150_000);
		expect(JSON.stringify(composeFit(right))).toMatch(/not detectable.*fuel pressure/);
	});

	test('one pull is no step in boost', () => {
		expect(right.json.boost_steps).toEqual([]);
		expect(right.json.boost_steps_refused.join(' ')).toMatch(/a step needs two/);
	});

	test('without draws there is none', () => {
		expect(loggedReport(drive, sheet).json.fit).toBeNull();
	});
});

test('a rail that reads half as much again fits no car of these answers, and the sensor is named', () => {
	const { fit, limits } = fitted(changedDrive('fuel_pressure', value => value * 1.5)).json;
	expect(fit).toMatchObject({ applied: false, effective: 0, moved: [] });
	expect(fit!.misfit!.look_at).toContain('sensor: fuel_pressure');
	// Nothing rests on it.
	expect(limits.after.map(({ value }) => value)).toEqual(limits.before.map(({ value }) => value));
});

describe('an audit of a sheet that keeps the log', () => {
	const kept = withLog(sheet, recordOfLog(right, sheet, {}));
	const options = { date: '2026-05-02', units: 'us', tool: 'test', draws: 60, next: false } as const;
	const audit = (of: typeof kept, unfitted = false) =>
		assess(testModel(), { sheet: of, warnings: [] }, { ...options, unfitted }).audit;
	const rests = audit(kept);
	const limit = ({ limits }: typeof rests) => limits.find(one => one.limit === 'sensors.meter_boost_limit')!;

	test('rests on the fit, and says of which day', () => {
		expect(rests.fit).toMatchObject({ days: ['2026-05-01'], applied: true });
		expect(rests.quantities['engine.air_efficiency']!.value).not.toBe(0.2838);
		const { low, high } = limit(audit(kept, true));
		expect(limit(rests).high! - limit(rests).low!).toBeLessThan(high! - low!);
	});

	test('power that the log shows is power that the sheet has: the plugs of the sheet are cold enough', () => {
		expect(rests.findings.find(({ rule }) => rule === 'ignition.plugs-too-hot')).toMatchObject({
			verdict: 'holds',
			unproved: false,
		});
	});

	test('each figure that it moved says of which day, and the picture has the band before the log behind it', () => {
		const judged = assess(testModel(), { sheet: kept, warnings: [] }, { ...options, step: false });
		const said = JSON.stringify(ladder(judged));
		expect(said).toMatch(/Air meter.*?fitted to the log of 2026-05-01/);
		expect(drawLadder(judged)!.svg).toContain('Gray behind it');
		expect(JSON.stringify(ladder(assess(testModel(), { sheet, warnings: [] }, { ...options, draws: 0 })))).not.toMatch(
			/fitted/,
		);
	});

	test('--unfitted leaves it aside', () => {
		const without = audit(kept, true);
		expect(without.fit).toBeNull();
		expect(without.limits).toEqual(audit(sheet).limits);
	});

	test('it stops counting when an answer it rests on has another value', () => {
		const changed = withAnswer(kept, 'injectors.rated_flow', { value: 62, unit: 'lb/h', known: 'paperwork' });
		expect(countingLogs(testModel(), changed)).toEqual([]);
		expect(audit(changed).fit).toBeNull();
	});

	test('another boost target changes nothing that was measured', () => {
		const other = withAnswer(kept, 'boost.target', { value: 9, unit: 'psi', known: 'estimate' });
		expect(countingLogs(testModel(), other)).toEqual(kept.logs);
	});
});

test('an earlier log counts while the answers it rests on stand', () => {
	const kept = withLog(
		sheet,
		recordOfLog({ ...right, json: { ...right.json, file: { ...right.json.file, sha256: 'a'.repeat(64) } } }, sheet, {}),
	);
	const together = fitted(drive, kept).json.fit!;
	expect(together).not.toEqual(right.json.fit);
	const changed = withAnswer(kept, 'injectors.rated_flow', { value: 62, unit: 'lb/h', known: 'paperwork' });
	expect([kept, changed].map(of => logsOf(testModel(), of)[0]!.changed)).toEqual([[], ['injectors.rated_flow']]);
});

test('one bad log does not refuse the others: it is left out, and said to be', () => {
	const bad = changedDrive('fuel_pressure', value => value * 1.5);
	const kept = withLog(sheet, recordOfLog(right, sheet, {}));
	const { fit, boost_steps_refused } = loggedReport(bad, kept, 'bad.csv', '2026-05-02', 60).json;
	expect(fit).toMatchObject({ applied: true, misfit: null, left_out: [{ log: 'bad.csv' }] });
	expect(fit!.left_out[0]!.look_at).toContain('sensor: fuel_pressure');
	expect(boost_steps_refused.join(' ')).toContain('bad.csv fits no car');
});
