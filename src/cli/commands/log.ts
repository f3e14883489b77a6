import { extname, parse } from 'node:path';
import { usualDraws } from '../../audit/audit.ts';
import type { LogReport } from '../../audit/log-report.ts';
import { takeLog } from '../../audit/take-log.ts';
import { writeOutput } from '../../files/output.ts';
import { parseMapping } from '../../log/column-mapping.ts';
import { plotLog, renderLog } from '../../report/log/render.ts';
import { BadTable } from '../../table/problem.ts';
import { sha256 } from '../assets/hash.ts';
import { loadModel } from '../assets/model.ts';
import { logOpener } from '../log-reader/open.ts';
import { today } from '../options/values.ts';
import { BadUsage, exit } from '../process/exit.ts';
import { print, printMessage } from '../process/output.ts';
import { progress } from '../process/progress.ts';
import { judgeLog, logName } from '../sheet/judge-log.ts';
import type { JudgeFlags } from '../sheet/judge-sheet.ts';
import { type Opened, openSheet, saveSheet, warnUnusual } from '../sheet/sheet.ts';

export interface LogFlags extends JudgeFlags {
	readonly channel?: readonly string[];
	readonly not?: readonly string[];
	readonly json?: boolean;
	readonly out?: string;
	readonly apply?: boolean;
}

const formats = { '.md': 'md', '.html': 'html', '.json': 'json' } as const;

/**
 * `swap-audit log SHEET LOG`: reads a log, judges it, prints or writes the report. With `--apply` the answers that it settles
 * go into the sheet, and a record of it; without nothing is changed.
 */
export async function log(argument: string, path: string, flags: LogFlags): Promise<number> {
	const format = formatOf(flags.out);
	const mappings = (flags.channel ?? []).map(text => {
		const read = parseMapping(text);
		if (read) return read;
		throw new BadUsage(`--channel: found ${JSON.stringify(text)}; accepted: NAME=HEADER or NAME=HEADER@UNIT`);
	});
	if (argument === '-' && path === '-') throw new BadUsage('log: the sheet and the log cannot both be standard input');
	if (argument === '-' && flags.apply)
		throw new BadUsage('log --apply: a sheet on standard input cannot be written; name its file');
	const open = logOpener(path);
	const model = await loadModel(flags.rules);
	const opened = openSheet(argument, model.rulebook.questions);
	warnUnusual(opened);
	const shown = progress();
	try {
		const said = {
			date: flags.date ?? today(),
			units: flags.units ?? opened.sheet.units,
			draws: flags.draws ?? usualDraws,
		};
		const report = await judgeLog(model, opened, path, { mappings, ignored: flags.not ?? [] }, said, shown, open);
		shown.end();
		if (flags.out !== undefined && format) {
			const { text, attachments } = renderLog(report, format, parse(flags.out).name, sha256);
			writeOutput(flags.out, text, attachments);
		}
		if (flags.apply) apply(opened, report);
		if (flags.json || flags.out === undefined) {
			const width = process.stdout.isTTY ? Math.min(process.stdout.columns ?? 80, 100) - 1 : 0;
			const ascii =
				process.env.TERM === 'dumb' ||
				!/utf-?8/i.test(process.env.LC_ALL || process.env.LC_CTYPE || process.env.LANG || '');
			if (width > 20 && !flags.json) print(plotLog(report, width, ascii));
			print(renderLog(report, flags.json ? 'json' : 'md', '', sha256).text);
		}
		return exit.done;
	} catch (error) {
		shown.end();
		// A broken table is reported with the file that it is in.
		if (error instanceof BadTable) throw new BadUsage(`${logName(path)}: ${error.message}`);
		throw error;
	}
}

/** Writes what the log settles into the sheet, but for what was measured by hand, and the log's record; says so on stderr. */
function apply(opened: Opened, report: LogReport): void {
	const { answers } = report.json;
	const taken = answers.filter(({ by_hand }) => !by_hand);
	const left = answers.filter(({ by_hand }) => by_hand);
	saveSheet(
		opened,
		takeLog(opened.sheet, report, id => taken.some(({ answer }) => answer === id)),
	);
	const listed = (of: typeof answers) => of.map(({ answer }) => answer).join(', ');
	printMessage(
		taken.length === 0
			? 'The log is kept in the sheet; it settles no answer.'
			: `Written into the sheet: ${listed(taken)}.`,
	);
	if (left.length > 0) printMessage(`Left as measured by hand: ${listed(left)}.`);
}

function formatOf(out: string | undefined): 'md' | 'html' | 'json' | null {
	if (out === undefined) return null;
	const ending = extname(out).toLowerCase();
	if (Object.hasOwn(formats, ending)) return formats[ending as keyof typeof formats];
	throw new BadUsage(
		`--out: found ${JSON.stringify(out)}; accepted: a file ending in ${Object.keys(formats).join(', ')}`,
	);
}
