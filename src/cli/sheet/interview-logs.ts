import type { LogReport } from '../../audit/log-report.ts';
import type { Model } from '../../audit/model.ts';
import { pathsBeginning, typedPath } from '../../files/path-completion.ts';
import type { ColumnChoices } from '../../log/column-mapping.ts';
import type { LogColumns } from '../../log/columns.ts';
import type { LogProgress } from '../../log/progress.ts';
import type { Sheet } from '../../sheet/sheet.ts';
import { logOpener } from '../log-reader/open.ts';
import { today } from '../options/values.ts';
import { judgeLog, lookAtLog } from './judge-log.ts';

/** What both faces of the interview need to read a log. No draws are made but those of the fit, which can be stopped. */
export const interviewLogs = (model: Model) => ({
	pathsBeginning,
	lookAtLog: (sheet: Sheet, path: string, choices: ColumnChoices): Promise<LogColumns> =>
		lookAtLog(model, sheet, typedPath(path), choices),
	judgeLog: (sheet: Sheet, path: string, choices: ColumnChoices, progress: LogProgress): Promise<LogReport> =>
		judgeLog(
			model,
			{ sheet, warnings: [] },
			typedPath(path),
			choices,
			{ date: today(), units: sheet.units, draws: 0, fit: true },
			{
				at: (taken, size) => progress.read(size ? taken / size : null),
				fitting: share => progress.fitted(share),
			},
			logOpener(typedPath(path)),
		),
});
