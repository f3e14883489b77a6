import { type Command, Option } from 'commander';
import { type Stage, stages } from '../../rulebook/rulebook.ts';
import { accesses } from '../../sheet/access.ts';
import { packOption, unitsOption } from '../options/flags.ts';
import { readDate, readMinutes, readStage, usualEvening } from '../options/values.ts';
import { type Status, sheetWords } from './words.ts';

export function plan(program: Command, status: Status): void {
	program
		.command('plan')
		.summary("an evening's work: what to do next, in one place at a time")
		.description(
			'Makes evenings of what is open before the next stage: one place at a time, what hurts people first. Changes nothing.',
		)
		.argument('<sheet>', sheetWords)
		.addOption(
			new Option('--minutes <minutes>', 'the time there is in an evening').argParser(readMinutes).default(usualEvening),
		)
		.addOption(new Option('--access <place>', 'one place only').choices(accesses))
		.addOption(new Option('--have <file>', 'parts at hand, one a line: they are not listed again'))
		.addOption(
			new Option('--day <stage>', 'print the procedure of a stage instead')
				.choices(stages)
				.argParser((stage, before: Stage | undefined) => readStage(stage, before, '--day')),
		)
		.addOption(new Option('--json', 'print the plan as JSON'))
		.addOption(new Option('--out <file>', 'write to a file: .md, .html, .json'))
		.addOption(unitsOption())
		.addOption(packOption())
		.addOption(
			new Option('--date <day>', 'the day to put on it, YYYY-MM-DD (default: today)').argParser(day => readDate(day)),
		)
		.action(async (sheet: string, flags) => status(await (await import('../commands/plan.ts')).plan(sheet, flags)));
}
