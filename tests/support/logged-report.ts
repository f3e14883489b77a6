import { type LogReport, reportLog } from '../../src/audit/log-report.ts';
import { stateOf } from '../../src/audit/logged.ts';
import { finish } from '../../src/fit/steps.ts';
import { carOf } from '../../src/log/car-of.ts';
import { Overview } from '../../src/log/overview.ts';
import type { Sheet } from '../../src/sheet/sheet.ts';
import { analyzed } from './analyzed.ts';
import { sha256, testModel } from './model.ts';
import type { Drive } from './simulated-drive.ts';

/** A drive judged in the car of a sheet as the command does it, without its table. */
export function loggedReport(
	drive: Pick<Drive, 'time' | 'channels'>,
	sheet: Sheet,
	name = 'drive.csv',
	date = '2026-05-01',
	draws = 0,
): LogReport {
	const model = testModel();
	const overview = new Overview();
	overview.take(drive);
	const read = new Set<string>();
	const solved = stateOf(model, sheet);
	const analysis = analyzed(drive, carOf(solved, read));
	const channels = [...drive.channels.keys()].map(id => ({ channel: id, header: id, unit: '', by: 'header' as const }));
	const totals = { rows: drive.time.length, unread: 0, faults: [], impossible: new Map() };
	const file = { name, sha256: sha256(name), bytes: 1 };
	const recording = { channels, unused: [], notes: [], totals };
	const log = { file, recording, analysis, overview: overview.all, read, solved };
	const options = { date, tool: 'test', units: sheet.units, draws };
	return finish(reportLog(model, { sheet, warnings: [] }, log, options));
}
