import { basename, extname, parse } from 'node:path';
import { impossibleOf, reportLog } from '../../audit/log-report.ts';
import { writeOutput } from '../../files/output.ts';
import { openStream } from '../../files/stream.ts';
import { solve } from '../../graph/solve.ts';
import { Analyzer } from '../../log/analyze.ts';
import { carOf } from '../../log/car-of.ts';
import { readGiven } from '../../log/options.ts';
import { Overview } from '../../log/overview.ts';
import { openRecording } from '../../log/record.ts';
import { givenAnswers } from '../../quantities/from-sheet.ts';
import { plotLog, renderLog } from '../../report/log/render.ts';
import { BadTable } from '../../table/problem.ts';
import { sha256 } from '../assets/hash.ts';
import { loadModel } from '../assets/model.ts';
import { version } from '../assets/version.ts';
import { today } from '../options/values.ts';
import { BadUsage, exit } from '../process/exit.ts';
import { print } from '../process/output.ts';
import { progress } from '../process/progress.ts';
import type { JudgeFlags } from '../sheet/judge-sheet.ts';
import { openSheet, warnUnusual } from '../sheet/sheet.ts';

export interface LogFlags extends JudgeFlags {
	readonly channel?: readonly string[];
	readonly not?: readonly string[];
	readonly json?: boolean;
	readonly out?: string;
}

const formats = { '.md': 'md', '.html': 'html', '.json': 'json' } as const;

/** `swap-audit log SHEET LOG`: reads a log, judges it, prints or writes the report. Neither sheet nor log is changed. */
export async function log(argument: string, path: string, flags: LogFlags): Promise<number> {
	const format = formatOf(flags.out);
	const given = (flags.channel ?? []).map(text => {
		const read = readGiven(text);
		if (read) return read;
		throw new BadUsage(`--channel: found ${JSON.stringify(text)}; accepted: NAME=HEADER or NAME=HEADER@UNIT`);
	});
	if (argument === '-' && path === '-') throw new BadUsage('log: the sheet and the log cannot both be standard input');
	const model = await loadModel(flags.rules);
	const opened = openSheet(argument, model.rulebook.questions);
	warnUnusual(opened);
	const stream = await openStream(path);
	const name = path === '-' ? 'standard input' : basename(path);
	const shown = progress(stream.size);
	try {
		const recording = await openRecording(stream.bytes, model.rulebook.channels, { given, not: flags.not ?? [] });
		const state = solve(model.graph, givenAnswers(opened.sheet, model.rulebook.questions));
		const analyzer = new Analyzer(carOf(state), model.rulebook.episodes!);
		const overview = new Overview();
		for await (const block of recording.blocks) {
			overview.take(block);
			analyzer.push(block);
			shown.at(stream.taken());
		}
		if (recording.totals.rows === 0) throw new BadTable('no row with a number', 'a table with numbers in its rows');
		const report = reportLog(
			model,
			opened,
			recording,
			analyzer.finish(impossibleOf(recording)),
			overview.all,
			{ name, sha256: stream.sha256(), bytes: stream.taken() },
			{ date: flags.date ?? today(), tool: version, units: flags.units ?? opened.sheet.units },
		);
		shown.end();
		if (flags.out !== undefined && format) {
			const { text, beside } = renderLog(report, format, parse(flags.out).name, sha256);
			writeOutput(flags.out, text, beside);
		}
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
		// A broken table is told with the file that it is in.
		if (error instanceof BadTable) throw new BadUsage(`${name}: ${error.message}`);
		throw error;
	}
}

function formatOf(out: string | undefined): 'md' | 'html' | 'json' | null {
	if (out === undefined) return null;
	const ending = extname(out).toLowerCase();
	if (Object.hasOwn(formats, ending)) return formats[ending as keyof typeof formats];
	throw new BadUsage(
		`--out: found ${JSON.stringify(out)}; accepted: a file ending in ${Object.keys(formats).join(', ')}`,
	);
}
