import type { Sheet } from '../sheet/sheet.ts';
import { withLogged } from './log-answers.ts';
import { recordOfLog, withLog } from './log-record.ts';
import type { LogReport } from './log-report.ts';

/** A sheet with a judged log in it: its record, and the answers that are taken from it, by id. */
export function takeLog(sheet: Sheet, report: LogReport, taken: (answer: string) => boolean): Sheet {
	const { file, date, answers } = report.json;
	const wanted = answers.filter(({ answer }) => taken(answer));
	const logged = withLogged(sheet, wanted, { name: file.name, date });
	return withLog(logged.sheet, recordOfLog(report, logged.sheet, logged.answers));
}
