import { printJson } from '../report/json.ts';
import { renderPart } from '../report/render.ts';
import { exit } from './exit.ts';
import { type JudgingFlags, judgeSheet } from './judged.ts';
import { print } from './say.ts';

type Table = 'limits' | 'next' | 'readings';

/** `swap-audit limits|next|readings SHEET`: one part of the audit alone, in words or as its JSON array. */
export async function table(
	which: Table,
	argument: string,
	flags: JudgingFlags & { readonly json?: boolean },
): Promise<number> {
	const assessment = await judgeSheet(argument, flags);
	if (flags.json) print(printJson(assessment.audit[which], 2));
	else print(renderPart(assessment, which));
	return exit.done;
}
