import type { LogReport } from '../audit/log-report.ts';
import type { Model } from '../audit/model.ts';
import type { Pass } from '../interview/state.ts';
import type { ColumnChoices } from '../log/column-mapping.ts';
import type { LogColumns } from '../log/columns.ts';
import type { LogProgress } from '../log/progress.ts';
import type { UnitSet } from '../sheet/question.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { Found } from './app.ts';

/** What the drawn face needs of the program around it: files, logs, signals. */
export interface Host {
	/** Whether an error that one of the others threw is for the person, to be shown; any other is a bug and ends it all. */
	isForPerson(error: unknown): error is Error;
	/** Whether the work goes on in another file since this error, and all is saved there. */
	isFork(error: Error): boolean;
	readonly found: readonly Found[];
	open(path: string): Sheet;
	/** The units that are offered first to a new build. */
	readonly units: UnitSet;
	create(name: string, units: UnitSet): Sheet;
	/** Gives the sheet as it is on the disk then: with the audits that another command added meanwhile. */
	save(sheet: Sheet): Sheet;
	/** Writes the audit beside the sheet and keeps its record in it. */
	writeAudit(sheet: Sheet, since: number | null): { readonly message: string; readonly sheet: Sheet };
	/** Paths that begin as typed. */
	pathsBeginning(text: string): readonly string[];
	/** What the columns of a log are, from its beginning. */
	lookAtLog(sheet: Sheet, path: string, choices: ColumnChoices): Promise<LogColumns>;
	/** Reads and judges a whole log, and fits the model to it. */
	judgeLog(sheet: Sheet, path: string, choices: ColumnChoices, progress: LogProgress): Promise<LogReport>;
	/** Calls back with the exit status when a signal asks the program to end. */
	onEndingSignal(stop: (status: number) => void): void;
}

/** What the drawn face starts with. */
export interface Opening {
	readonly model: Model;
	readonly today: string;
	readonly tool: string;
	/** A sheet to start with; null: the opening screen. */
	readonly sheet: Sheet | null;
	/** Null: the one that was under way. */
	readonly pass: Pass | null;
	readonly section: string | null;
}

/** How the drawn face ended. */
export interface Ended {
	readonly status: number;
	readonly sheet: Sheet | null;
	/** Why the last sheet could not be saved; null when it is saved. */
	readonly unsaved: Error | null;
}
