import { describe, expect, test } from 'vitest';
import { takeLog } from '../../src/audit/take-log.ts';
import type { Steps } from '../../src/fit/steps.ts';
import type { LogProgress } from '../../src/log/progress.ts';
import { type App, newApp } from '../../src/tui/app.ts';
import { Fitter } from '../../src/tui/fitter.ts';
import type { Host } from '../../src/tui/host.ts';
import { LogReader } from '../../src/tui/log-reader.ts';
import { withLog } from '../../src/tui/log-steps.ts';
import { withSheet } from '../../src/tui/open-sheet.ts';
import { loggedReport } from '../support/logged-report.ts';
import { buildSheet, testModel } from '../support/model.ts';
import { simulateDrive } from '../support/simulated-drive.ts';
import { answerIn, logScreens, press } from './log-screens.ts';

const sheet = { ...buildSheet('boosted'), name: 'mule' };
const app = withSheet(newApp(testModel(), '2026-05-01', '0.0.0', []), sheet, 'full', null);
const screens = await logScreens(app);
const last = (of: typeof app) => of.effects.at(-1)!;
const key = (text: string) => ({ key: 'text', text }) as const;

describe('a log in the interview', () => {
	test('its name is completed as far as all that begin so agree', () => {
		expect(screens['log-file']!.field.characters.join('')).toBe('drive-1.csv');
		expect(last(press(screens['log-file']!, 'tab'))).toEqual({ do: 'offer-paths', begun: 'drive-1.csv' });
	});

	test('a column is given another channel and a unit, or left alone, and is looked at anew', () => {
		const columns = screens['log-columns']!;
		const at = columns.log!.found!.columns.findIndex(({ taken }) => taken?.channel === 'fuel_pressure');
		const header = columns.log!.found!.columns[at]!.header;
		const channel = press({ ...columns, cursor: at }, key('c'));
		expect(last(press(channel, 'enter'))).toMatchObject({
			do: 'look-at-log',
			choices: { mappings: [], ignored: [header] },
		});
		const oil = testModel().rulebook.channels.findIndex(({ id }) => id === 'oil_pressure');
		const units = press({ ...channel, cursor: oil + 1 }, 'enter');
		const chosen = press(units, 'down', 'enter');
		const unit = testModel().rulebook.channels[oil]!.units[0];
		expect(last(chosen)).toMatchObject({
			choices: { mappings: [{ channel: 'oil_pressure', header, unit }], ignored: [] },
		});
	});

	test('Esc stops the reading, and what comes of it later is passed over', () => {
		const stopped = press(screens['log-reading']!, 'escape');
		expect(stopped.screen).toBe('logColumns');
		expect(last(stopped)).toEqual({ do: 'stop-log' });
	});

	test('what was measured by hand is left, until it is ticked; the rest goes into the sheet with the log', () => {
		const answers = screens['log-answers']!;
		const { left, report } = answers.log!;
		expect(left).toContain('boost.lambda_logged');
		const at = report!.json.answers.findIndex(({ answer }) => answer === 'boost.lambda_logged');
		const ticked = press({ ...answers, cursor: at }, key(' '), 'enter');
		expect(ticked.screen).toBe('audit');
		expect(answerIn(ticked, 'boost.lambda_logged')?.note).toMatch(/^from the log drive-1\.csv/);
		expect(answerIn(ticked, 'boost.logged_peak')).toEqual(sheet.answers.boost!.logged_peak);
		expect(ticked.interview!.sheet.logs).toHaveLength(1);
		expect(
			ticked.assessment!.audit.findings.some(
				({ rule, verdict }) => rule === 'log.lean-under-load' && verdict === 'fails',
			),
		).toBe(true);
		expect(ticked.effects.map(effect => effect.do)).toContain('save');
	});

	test('back leads out of it step by step, and the sheet is as it was', () => {
		const out = press(screens['log-answers']!, 'escape', 'escape', 'escape', 'escape');
		expect(out.log).toBeNull();
		expect(out.interview!.sheet).toBe(app.interview!.sheet);
		expect(withLog(out, { share: 1 })).toBe(out);
	});
});

describe('while the model is fitted', () => {
	test('Esc goes on without the fit, and Ctrl-B leaves the log', () => {
		const fitting = withLog(screens['log-reading']!, { doing: 'fitting', share: 0.5 });
		const going = press(fitting, 'escape');
		expect(going.screen).toBe('logReading');
		expect(last(going)).toEqual({ do: 'skip-fit' });
		expect(last(press(fitting, 'ctrl-b'))).toEqual({ do: 'stop-log' });
	});

	test('the reader passes on how far it is, and that it is to go on without', async () => {
		let now = screens['log-reading']!;
		const seen: unknown[] = [];
		const report = screens['log-found']!.log!.report!;
		const host = {
			judgeLog: async (_sheet: unknown, _path: unknown, _choices: unknown, progress: LogProgress) => {
				progress.read(1);
				seen.push(now.log!.doing, progress.fitted(0.25), now.log!.doing, now.log!.share);
				reader.skipFit();
				seen.push(progress.fitted(0.5));
				return report;
			},
			isForPerson: () => false,
		} as unknown as Host;
		const reader = new LogReader(host, change => {
			now = change(now);
		});
		reader.judge(sheet, 'drive.csv', { mappings: [], ignored: [] });
		await expect.poll(() => now.screen).toBe('logFound');
		expect(seen).toEqual(['reading', true, 'fitting', 0.25, false]);
	});
});

describe('an audit after new answers, of a sheet with a log', () => {
	const drive = simulateDrive({ rate: 10, pulls: 1, seed: 3 });
	const logged = takeLog(sheet, loggedReport(drive, sheet, 'drive-1.csv'), () => false);
	const asking = {
		...withSheet(newApp(testModel(), '2026-05-01', '0.0.0', []), logged, 'full', null),
		screen: 'question',
	};
	const fitting = press(asking as App, 'ctrl-t');

	test('fits first, on a screen of its own', () => {
		expect(fitting).toMatchObject({ screen: 'fitting', fitting: { to: 'audit', share: 0 }, assessment: null });
		expect(last(fitting)).toEqual({ do: 'fit', sheet: fitting.interview!.sheet });
	});

	test('Esc shows it without the fit, and it is not written', () => {
		const without = press({ ...fitting, effects: [] }, 'escape');
		expect(without).toMatchObject({ screen: 'audit', fitting: null, effects: [] });
		expect(without.assessment!.audit.fit).toBeNull();
		expect(without.notice).toContain('without the fit');
		// What is saved is fitted.
		expect(press(without, key('s')).screen).toBe('fitting');
	});

	test('the bar follows the fit; then the audit is written. Where nobody waits any more it ends', async () => {
		const seen: unknown[] = [];
		let now: App = { ...withSheet(app, sheet, 'full', null), screen: 'fitting', fitting: { to: 'end', share: 0 } };
		const fitter = new Fitter(change => {
			now = change(now);
			seen.push(now.fitting?.share);
		});
		function* steps(): Steps<null> {
			yield* [0, 0.101, 0.104, 0.5];
			return null;
		}
		fitter.follow(steps());
		await expect.poll(() => now.screen).toBe('end');
		expect(seen).toEqual([0.1, 0.5, undefined]);
		expect(last(now)).toMatchObject({ do: 'write-audit' });
		fitter.follow(steps());
		await expect.poll(() => seen.length).toBe(4);
		expect(now.screen).toBe('end');
	});
});
