import { readHave } from '../../audit/have.ts';
import type { Model } from '../../audit/model.ts';
import { planEvenings } from '../../audit/plan.ts';
import { nextStage, planLines } from '../../audit/plan-lines.ts';
import { writeOutput } from '../../files/output.ts';
import { readWhole } from '../../files/read.ts';
import { valueIn } from '../../graph/solve.ts';
import { composePlan, type Plan, planAsData } from '../../report/compose/plan.ts';
import { composeDay } from '../../report/compose/procedures.ts';
import type { Document } from '../../report/document.ts';
import type { Format } from '../../report/formats.ts';
import { printHtml } from '../../report/html.ts';
import { printJson } from '../../report/json.ts';
import { printMarkdown } from '../../report/markdown.ts';
import type { Stage } from '../../rulebook/rulebook.ts';
import type { Access } from '../../sheet/access.ts';
import { BadUsage, exit } from '../process/exit.ts';
import { print, printMessage } from '../process/output.ts';
import { type JudgeFlags, judgeSheet } from '../sheet/judge-sheet.ts';
import { outFormat, refuseSheet } from '../sheet/out-file.ts';

export interface PlanFlags extends JudgeFlags {
	readonly minutes: number;
	readonly access?: Access;
	readonly have?: string;
	readonly day?: Stage;
	readonly json?: boolean;
	readonly out?: string;
}

const endings = ['.md', '.html', '.json'];

/** `swap-audit plan SHEET`: the next stage's open lines as evenings, or with --day a stage's procedure. Changes nothing. */
export async function plan(argument: string, flags: PlanFlags): Promise<number> {
	const format = outFormat(flags.out, endings);
	if (flags.out !== undefined) refuseSheet(flags.out);
	if (flags.day !== undefined && (flags.json || format === 'json'))
		throw new BadUsage('plan --day prints a procedure to read: no JSON; accepted: .md, .html');
	const assessment = await judgeSheet(argument, flags, { extent: 'page' });
	if (flags.day !== undefined) return write(composeDay(flags.day, assessment), format, flags, assessment.model.hash);
	const have = readHave(flags.have === undefined ? '' : readWhole(flags.have).text, assessment.model.rulebook.parts);
	for (const line of have.unknown) printMessage(`--have: no line asks for a part called ${JSON.stringify(line)}`);
	const stage = nextStage(assessment);
	const lines = stage === null ? [] : planLines(assessment, stage);
	const planned: Plan = {
		...planEvenings(lines, {
			minutes: flags.minutes,
			only: flags.access ?? null,
			engineOut: valueIn(assessment.state, 'build.stage') === 'on-stand',
		}),
		stage,
		minutes: flags.minutes,
		have: have.parts,
	};
	if (flags.json || format === 'json') {
		const text = printJson(planAsData(planned, assessment), 2);
		if (format === 'json') writeOutput(flags.out!, `${text}\n`);
		if (flags.json || format !== 'json') print(text);
		return exit.done;
	}
	return write(composePlan(planned, assessment), format, flags, assessment.model.hash);
}

function write(document: Document, format: Format | null, { out }: PlanFlags, hash: Model['hash']): number {
	const text = format === 'html' ? printHtml(document, hash) : printMarkdown(document, null);
	if (out === undefined) print(text);
	else writeOutput(out, text);
	return exit.done;
}
