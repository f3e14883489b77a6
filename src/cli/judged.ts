import { type Assessment, assess } from '../audit/assess.ts';
import type { UnitSet } from '../sheet/question.ts';
import { loadModel } from './model.ts';
import { today } from './options.ts';
import { type Opened, openSheet, sayOdd } from './sheet.ts';
import { version } from './version.ts';

/** The flags that every judging command knows. */
export interface JudgingFlags {
	readonly units?: UnitSet;
	readonly rules?: readonly string[];
	readonly date?: string;
	readonly draws?: number;
}

/** Enough draws for a steady second digit of how sure a verdict is. */
export const usualDraws = 400;

/** Reads a sheet and judges it. */
export async function judgeSheet(argument: string, flags: JudgingFlags): Promise<Assessment & { opened: Opened }> {
	const model = await loadModel(flags.rules);
	const opened = openSheet(argument, model.rulebook.questions);
	sayOdd(opened);
	const assessment = assess(model, opened, {
		date: flags.date ?? today(),
		units: flags.units ?? opened.sheet.units,
		tool: version,
		draws: flags.draws ?? usualDraws,
	});
	return { ...assessment, opened };
}
