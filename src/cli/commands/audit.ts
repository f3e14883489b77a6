import { existsSync } from 'node:fs';
import { dirname, extname, parse } from 'node:path';
import { compare } from '../../audit/compare.ts';
import { recordOf } from '../../audit/record.ts';
import { gateOpen } from '../../audit/stages.ts';
import { writeOutput } from '../../files/output.ts';
import { textOf } from '../../files/read.ts';
import { renderAudit } from '../../report/render.ts';
import type { Stage } from '../../rulebook/rulebook.ts';
import { BadUsage, exit } from '../process/exit.ts';
import { print, printMessage } from '../process/output.ts';
import { findBaseline } from '../sheet/baseline.ts';
import { type JudgeFlags, judgeSheet } from '../sheet/judge-sheet.ts';
import { saveSheet } from '../sheet/sheet.ts';

export interface AuditFlags extends JudgeFlags {
	readonly out?: string;
	readonly json?: boolean;
	readonly gate?: Stage;
	readonly record?: boolean;
	/** Given by `recheck` alone: what to compare with; null is the last record. */
	readonly since?: string | null;
}

const formats = { '.md': 'md', '.html': 'html', '.json': 'json', '.csv': 'csv' } as const;

/** `swap-audit audit SHEET` and `recheck SHEET`: judges one sheet and prints, writes and records what came of it. */
export async function audit(argument: string, flags: AuditFlags): Promise<number> {
	const format = formatOf(flags.out);
	const judged = await judgeSheet(argument, flags);
	const rechecking = flags.since !== undefined;
	const before = rechecking ? findBaseline(judged.sheet, flags.since ?? null) : null;
	if (rechecking && !before) printMessage('Nothing to compare with: this sheet holds no earlier audit.');
	const told = before ? { ...judged, audit: { ...judged.audit, since: compare(before, judged) } } : judged;
	if (flags.out !== undefined && format) {
		refuseSheet(flags.out);
		const { text, pictures } = renderAudit(told, format, parse(flags.out).name);
		writeOutput(flags.out, text, pictures);
	}
	if (flags.record ?? (flags.out !== undefined || rechecking)) {
		saveSheet(judged.opened, { ...judged.sheet, audits: [...judged.sheet.audits, recordOf(judged)] });
	}
	// Set before it is printed: a pipe that closes early must not open the gate.
	process.exitCode = flags.gate && !gateOpen(told.audit.stages, flags.gate) ? exit.notPassed : exit.done;
	if (flags.json || flags.out === undefined) {
		print(renderAudit(told, flags.json ? 'json' : 'md', '').text);
	}
	return process.exitCode;
}

/** An audit is never written over a sheet, whether it is named by its own path or through a link. */
function refuseSheet(out: string): void {
	if (!/"format"\s*:\s*"swap-audit\/sheet"/.test(textOf(out) ?? '')) return;
	throw new BadUsage(`--out: found ${JSON.stringify(out)}, which is a sheet; accepted: the name of another file`);
}

function formatOf(out: string | undefined): 'md' | 'html' | 'json' | 'csv' | null {
	if (out === undefined) return null;
	const folder = dirname(out);
	if (!existsSync(folder)) throw new BadUsage(`--out: there is no folder ${JSON.stringify(folder)}; make it first`);
	const ending = extname(out).toLowerCase();
	if (Object.hasOwn(formats, ending)) return formats[ending as keyof typeof formats];
	throw new BadUsage(
		`--out: found ${JSON.stringify(out)}; accepted: a file ending in ${Object.keys(formats).join(', ')}`,
	);
}
