import { fstatSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { FileProblem } from '../files/problem.ts';
import { printJson } from '../report/json.ts';
import { BadSheet } from '../sheet/problem.ts';
import { exit } from './exit.ts';
import type { JudgingFlags } from './judged.ts';
import { loadModel } from './model.ts';
import { OneAfterAnother } from './one-after-another.ts';
import { today } from './options.ts';
import { print, printLine } from './say.ts';
import { version } from './version.ts';

/** `swap-audit audit --lines`: one sheet a line on stdin, one audit a line on stdout. A bad line is told and passed over. */
export async function auditLines(flags: JudgingFlags): Promise<number> {
	if (fstatSync(0).isDirectory())
		throw new FileProblem('standard input', 'this is a folder', 'Pipe sheets in, one a line.');
	const sheets = new OneAfterAnother(await loadModel(flags.rules), { tool: version, units: flags.units });
	let line = 0;
	let bad = 0;
	for await (const text of createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY })) {
		line++;
		try {
			printLine(sheets.audit(text, flags.date ?? today()));
		} catch (error) {
			if (!(error instanceof BadSheet)) throw error;
			bad++;
			print(printJson({ line, error: error.message }));
		}
	}
	return bad > 0 ? exit.badInput : exit.done;
}
