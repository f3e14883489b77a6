import type { LogReport } from '../audit/log-report.ts';
import { takeLog } from '../audit/take-log.ts';
import { leave } from '../interview/session.ts';
import { type ColumnChoices, noChoices } from '../log/column-mapping.ts';
import type { LogColumns } from '../log/columns.ts';
import type { App } from './app.ts';
import type { Effect } from './effect.ts';
import { toAudit } from './judging.ts';
import { lineEditor } from './line-editor.ts';
import type { LogSession } from './log-session.ts';
import { withSheet } from './open-sheet.ts';

/** Begins to read a log: asks for the file. */
export const readLog = (app: App): App => ({
	...app,
	screen: 'logFile',
	field: lineEditor(),
	taking: 'answer',
	notice: null,
	cursor: 0,
	log: {
		back: app.screen === 'audit' || app.screen === 'build' ? app.screen : 'question',
		path: '',
		offers: [],
		choices: noChoices,
		found: null,
		column: 0,
		channel: null,
		doing: 'reading',
		share: null,
		report: null,
		left: [],
	},
});

/** The app with something of the log changed. */
export const withLog = (app: App, change: Partial<LogSession>): App =>
	app.log ? { ...app, log: { ...app.log, ...change } } : app;

/** Completes the path that is typed as far as all that begin so agree, and shows them. */
export function offered(app: App, offers: readonly string[]): App {
	const [first = '', ...others] = offers;
	let length = first.length;
	for (const other of others) while (!other.startsWith(first.slice(0, length))) length--;
	const field = offers.length === 0 ? app.field : lineEditor(first.slice(0, length));
	return withLog(
		{ ...app, field, notice: offers.length === 0 ? 'No file begins so.' : null },
		{ offers: offers.length > 1 ? offers : [] },
	);
}

const asking = (app: App, effect: Effect): App => ({ ...app, effects: [...app.effects, effect] });

/** Looks at the beginning of the file, with what was said of its columns. */
export function lookAt(app: App, path: string, choices: ColumnChoices): App {
	const next = withLog({ ...app, notice: 'Reading the beginning ...' }, { path, choices });
	return asking(next, { do: 'look-at-log', path, choices });
}

/** The columns as they were found, to be looked over. What was asked meanwhile is passed over. */
export function lookedAt(app: App, choices: ColumnChoices, found: LogColumns): App {
	if (app.log?.choices !== choices) return app;
	const cursor = app.screen === 'logFile' ? 0 : app.log.column;
	return withLog({ ...app, screen: 'logColumns', cursor, notice: null, field: lineEditor() }, { found, channel: null });
}

/** Reads the whole log. */
export function judge(app: App): App {
	const { path, choices } = app.log!;
	const { sheet } = app.interview!;
	const next = withLog({ ...app, screen: 'logReading', notice: null }, { doing: 'reading', share: null });
	return asking(next, { do: 'judge-log', path, choices, sheet });
}

/** What the log came to; what was measured by hand is left unless it is ticked. */
export function judged(app: App, report: LogReport): App {
	if (app.screen !== 'logReading') return app;
	const left = report.json.answers.filter(({ by_hand }) => by_hand).map(({ answer }) => answer);
	return withLog({ ...app, screen: 'logFound', cursor: 0, scroll: 0 }, { report, left });
}

/** Back to where it began, the log left alone. */
export function leaveLog(app: App): App {
	const { back } = app.log!;
	const next = { ...app, log: null, cursor: 0, notice: null, field: lineEditor() };
	return back === 'question' ? { ...next, screen: 'build' } : { ...next, screen: back };
}

/** Puts the log and the answers that are taken into the sheet, and judges it; compared with its last audit. */
export function take(app: App): App {
	const { report, left } = app.log!;
	const sheet = takeLog(leave(app.interview!, ''), report!, answer => !left.includes(answer));
	const opened = withSheet({ ...app, log: null }, sheet, null, null);
	const since = sheet.audits.length > 0 ? sheet.audits.length : null;
	const judgedAnew = { ...opened, interview: { ...opened.interview!, since } };
	return toAudit({ ...judgedAnew, effects: [...app.effects, { do: 'save', sheet }] });
}
