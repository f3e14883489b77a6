import { type Command, Option } from 'commander';
import { packOption, unitsOption } from '../options/flags.ts';
import type { Status } from './words.ts';

export function interview(program: Command, status: Status): void {
	program
		.command('interview')
		.summary('answer questions about a build')
		.description('Asks about a build and keeps every answer in the sheet at once: stop whenever you like, go on later.')
		.argument('[sheet]', 'a path or a name; one that does not exist is started')
		.option('--quick', 'the quick pass: 12 to 20 minutes, then what needs a gauge')
		.addOption(new Option('--section <section>', 'one section only'))
		.option('--plain', 'by lines, without a drawn screen')
		.addOption(unitsOption())
		.addOption(packOption())
		.action(async (sheet, flags) => status(await (await import('../commands/interview.ts')).interview(sheet, flags)));
}
