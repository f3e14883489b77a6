import { type Command, Option } from 'commander';
import { endings } from '../../report/formats.ts';
import { packOption, unitsOption } from '../options/flags.ts';
import { readDate } from '../options/values.ts';
import { type Status, sheetWords } from './words.ts';

export function pins(program: Command, status: Status): void {
	program
		.command('pins')
		.summary('hold the halves of plugs against each other')
		.description(
			'Prints what to do at each pin where two halves of a plug meet, what must not meet, and a meter card. With --read, reads a table of pins into the sheet.',
		)
		.argument('<sheet>', sheetWords)
		.option('--json', 'print JSON')
		.addOption(new Option('--out <file>', `write it to a file ending in ${endings.join(', ')}`))
		.addOption(unitsOption())
		.addOption(packOption())
		.addOption(
			new Option('--date <day>', 'the day on the plan, YYYY-MM-DD (default: today)').argParser(day => readDate(day)),
		)
		.addOption(new Option('--read <file>', 'a table of pins: pin, wire, circuit, and if wanted gauge and note'))
		.addOption(new Option('--plug <name>', 'the plug that the table is of'))
		.addOption(new Option('--half <half>', 'which half of it').choices(['engine', 'car', 'controller']))
		.addOption(new Option('--mates <name>', 'the plug that it meets, where that has another name'))
		.addOption(new Option('--from <text>', 'where the table is from'))
		.addOption(
			new Option('--column <name=header>', 'which header a column has, like pin=Cavity; may be given again')
				.argParser((word: string, before: readonly string[]) => [...before, word])
				.default([], 'their own names'),
		)
		.action(async (sheet: string, flags) => status(await (await import('../commands/pins.ts')).pins(sheet, flags)));
}
