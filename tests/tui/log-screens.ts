import { columnsOf } from '../../src/log/columns.ts';
import { openRecording } from '../../src/log/record.ts';
import { answerTo } from '../../src/sheet/sheet.ts';
import type { App } from '../../src/tui/app.ts';
import type { Key } from '../../src/tui/keys.ts';
import { judged, lookedAt, offered, readLog } from '../../src/tui/log-steps.ts';
import { reduce } from '../../src/tui/reduce.ts';
import { driveTable } from '../support/drive-table.ts';
import { loggedReport } from '../support/logged-report.ts';
import { channels, pieces } from '../support/recorded.ts';
import { simulateDrive } from '../support/simulated-drive.ts';

const press = (app: App, ...keys: (Key | string)[]): App =>
	keys.reduce<App>((now, key) => reduce(now, typeof key === 'string' ? ({ key } as Key) : key), app);

/** The screens of a log that is read into the sheet of an app, in their order. */
export async function logScreens(app: App): Promise<Record<string, App>> {
	const file = readLog(app);
	const named = press(offered(file, ['drive-1.csv', 'drive-2.csv']), { key: 'text', text: '1.csv' });
	const looking = press(named, 'enter');
	const drive = simulateDrive({ rate: 10, pulls: 1, faults: { leanOnTop: 0.08 }, seed: 3 });
	const head = driveTable({ ...drive, time: drive.time.slice(0, 400) });
	const found = columnsOf(await openRecording(pieces(new TextEncoder().encode(head), 65_536), channels()));
	const columns = lookedAt(looking, looking.log!.choices, found);
	const reading = press(columns, 'enter');
	const report = loggedReport(drive, app.interview!.sheet, 'drive-1.csv');
	// Without its points there is nothing to fit, which would take an audit of it seconds.
	const decided = judged(reading, { ...report, analysis: { ...report.analysis, points: [] } });
	return {
		'log-file': named,
		'log-columns': columns,
		'log-channel': press(columns, { key: 'text', text: 'c' }),
		'log-reading': { ...reading, log: { ...reading.log!, share: 0.4 } },
		'log-found': decided,
		'log-answers': press(decided, 'enter', 'down'),
	};
}

export { press };
export const answerIn = (app: App, id: string) => answerTo(app.interview!.sheet, id);
