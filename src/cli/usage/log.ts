import { type Command, Option } from 'commander';
import { collect, drawsOption, packOption, unitsOption } from '../options/flags.ts';
import { readDate } from '../options/values.ts';
import { type Status, sheetWords } from './words.ts';

export function log(program: Command, status: Status): void {
	program
		.command('log')
		.summary('judge a recorded drive')
		.description(
			'Reads a log, a table of numbers as text, says what the engine did and what the log contradicts. Changes nothing without --apply.',
		)
		.argument('<sheet>', sheetWords)
		.argument('<log>', 'a table as text, gzip or not, or - for standard input')
		.addOption(
			new Option(
				'--channel <name=header@unit>',
				'what a column is, where its header does not say so; may be given again',
			).argParser(collect),
		)
		.addOption(new Option('--not <header>', 'leave a column alone; may be given again').argParser(collect))
		.addOption(new Option('--out <file>', 'write to a file: .md (pictures beside it), .html, .json'))
		.addOption(new Option('--json', 'print the log as JSON'))
		.addOption(
			new Option('--apply', 'write the answers that it settles into the sheet, and keep a record of the log there'),
		)
		.addOption(unitsOption())
		.addOption(packOption())
		.addOption(
			new Option('--date <day>', 'the day to put on it, YYYY-MM-DD (default: today)').argParser(day => readDate(day)),
		)
		.addOption(drawsOption())
		.action(async (sheet: string, path: string, flags) =>
			status(await (await import('../commands/log.ts')).log(sheet, path, flags)),
		);
}
