import { parse } from 'node:path';
import { compare } from '../../audit/compare.ts';
import { recordOf, withRecord } from '../../audit/record.ts';
import { gateOpen } from '../../audit/stages.ts';
import { writeOutput } from '../../files/output.ts';
import { whyShut } from '../../report/compose/readiness.ts';
import { renderAudit } from '../../report/render.ts';
import type { Stage } from '../../rulebook/rulebook.ts';
import { exit } from '../process/exit.ts';
import { print, printMessage } from '../process/output.ts';
import { findBaseline } from '../sheet/baseline.ts';
import { type JudgeFlags, judgeSheet } from '../sheet/judge-sheet.ts';
import { outFormat, refuseSheet } from '../sheet/out-file.ts';
import { saveSheet } from '../sheet/sheet.ts';
import { writtenWords } from '../sheet/written.ts';

export interface AuditFlags extends JudgeFlags {
	readonly out?: string;
	readonly json?: boolean;
	readonly whole?: boolean;
	readonly gate?: Stage;
	readonly record?: boolean;
	/** Given by `recheck` alone: what to compare with; null is the last record. */
	readonly since?: string | null;
}

/** `swap-audit audit SHEET` and `recheck SHEET`: judges one sheet and prints, writes and records what came of it. */
export async function audit(argument: string, flags: AuditFlags): Promise<number> {
	const format = outFormat(flags.out);
	const extent = flags.json || flags.whole || flags.out !== undefined ? 'whole' : 'page';
	const judged = await judgeSheet(argument, flags, { extent });
	const rechecking = flags.since !== undefined;
	// Made where it is wanted: what is only printed leaves no record.
	const record = () => recordOf(judged);
	const before = rechecking ? findBaseline(judged.sheet, record(), flags.since ?? null) : null;
	if (rechecking && !before) printMessage('Nothing to compare with: this sheet holds no earlier audit.');
	const assessment = before ? { ...judged, audit: { ...judged.audit, since: compare(before, judged) } } : judged;
	if (flags.out !== undefined && format) {
		refuseSheet(flags.out);
		const { text, attachments } = renderAudit(assessment, format, parse(flags.out).name, flags.whole);
		writeOutput(flags.out, text, attachments);
		for (const line of writtenWords(assessment, flags.out, Object.keys(attachments), record())) {
			printMessage(line);
		}
	}
	if (flags.record ?? (flags.out !== undefined || rechecking)) {
		saveSheet(judged.opened, { ...judged.sheet, audits: withRecord(judged.sheet.audits, record()) });
	}
	// Set before it is printed: a pipe that closes early must not open the gate.
	const shut = flags.gate !== undefined && !gateOpen(assessment.audit.stages, flags.gate);
	process.exitCode = shut ? exit.notPassed : exit.done;
	if (shut) printMessage(whyShut(assessment, flags.gate!));
	if (flags.json || flags.out === undefined) {
		print(renderAudit(assessment, flags.json ? 'json' : 'md', '', flags.whole).text);
	}
	return process.exitCode;
}
