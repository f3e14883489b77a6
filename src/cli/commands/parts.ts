import { printJson } from '../../report/json.ts';
import { renderPart } from '../../report/render.ts';
import { exit } from '../process/exit.ts';
import { print } from '../process/output.ts';
import { type JudgeFlags, judgeSheet } from '../sheet/judge-sheet.ts';

type Table = 'limits' | 'next' | 'readings';

/** `swap-audit limits|next|readings SHEET`: one part of the audit alone, in words or as its JSON array. */
export async function printPart(
	which: Table,
	argument: string,
	flags: JudgeFlags & { readonly json?: boolean },
): Promise<number> {
	const assessment = await judgeSheet(argument, flags, { gateDraws: 0, extent: 'page' });
	if (flags.json) print(printJson(assessment.audit[which], 2));
	else print(renderPart(assessment, which));
	return exit.done;
}
