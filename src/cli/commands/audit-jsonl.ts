import { fstatSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { assess } from '../../audit/assess.ts';
import { FileProblem } from '../../files/problem.ts';
import { largest } from '../../files/read.ts';
import { printJson } from '../../report/json.ts';
import { checkSheet } from '../../sheet/check.ts';
import { parseSheet } from '../../sheet/parse.ts';
import { BadSheet } from '../../sheet/problem.ts';
import { loadModel } from '../assets/model.ts';
import { version } from '../assets/version.ts';
import { today } from '../options/values.ts';
import { exit } from '../process/exit.ts';
import { print } from '../process/output.ts';
import type { JudgeFlags } from '../sheet/judge-sheet.ts';

const tooLong = new BadSheet([{ path: 'sheet', found: 'a line of more than 16 MB', accepted: 'one sheet a line' }]);

/**
 * `swap-audit audit --lines`: one sheet a line on stdin, one audit without draws a line on stdout. A bad line is reported
 * and passed over.
 */
export async function auditJsonl(flags: JudgeFlags): Promise<number> {
	if (fstatSync(0).isDirectory())
		throw new FileProblem('standard input', 'this is a folder', 'Pipe sheets in, one a line.');
	const model = await loadModel(flags.rules);
	let line = 0;
	let bad = 0;
	for await (const text of createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY })) {
		line++;
		try {
			if (text.length > largest) throw tooLong;
			const checked = checkSheet(parseSheet(text), model.rulebook.questions);
			const units = flags.units ?? checked.sheet.units;
			const { audit } = assess(model, checked, { date: flags.date ?? today(), units, tool: version, draws: 0 });
			print(printJson(audit));
		} catch (error) {
			if (!(error instanceof BadSheet)) throw error;
			bad++;
			print(printJson({ line, error: error.message }));
		}
	}
	return bad > 0 ? exit.badInput : exit.done;
}
