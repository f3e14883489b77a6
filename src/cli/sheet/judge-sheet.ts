import { type Assessment, assess } from '../../audit/assess.ts';
import { type AuditOptions, usualDraws } from '../../audit/audit.ts';
import type { UnitSet } from '../../sheet/question.ts';
import { loadModel } from '../assets/model.ts';
import { version } from '../assets/version.ts';
import { today } from '../options/values.ts';
import { type Opened, openSheet, warnUnusual } from './sheet.ts';

/** The flags that every judging command knows. */
export interface JudgeFlags {
	readonly units?: UnitSet;
	readonly rules?: readonly string[];
	readonly date?: string;
	readonly draws?: number;
	readonly unfitted?: boolean;
}

/** Reads a sheet and judges it. Where stages are not looked at, `gateDraws` is 0. */
export async function judgeSheet(
	argument: string,
	flags: JudgeFlags,
	{ gateDraws = usualDraws, extent = 'whole' }: Pick<AuditOptions, 'gateDraws' | 'extent'> = {},
): Promise<Assessment & { opened: Opened }> {
	const model = await loadModel(flags.rules);
	const opened = openSheet(argument, model.rulebook.questions);
	warnUnusual(opened);
	const assessment = assess(model, opened, {
		date: flags.date ?? today(),
		units: flags.units ?? opened.sheet.units,
		tool: version,
		draws: flags.draws ?? usualDraws,
		gateDraws,
		extent,
		unfitted: flags.unfitted ?? false,
	});
	return { ...assessment, opened };
}
