import { type Command, Option } from 'commander';
import { formatsInWords } from '../../report/formats.ts';
import { stages } from '../../rulebook/rulebook.ts';
import { readDate, readDraws, readStage, readUnits } from './values.ts';

/** Gathers an option that may be given again. */
export const collect = (path: string, paths: readonly string[] = []): string[] => [...paths, path];

export const unitsOption = (words = "units to write in, if not the sheet's own") =>
	new Option('--units <set>', words).choices(['us', 'metric']).argParser(readUnits);

export const packOption = () =>
	new Option('--rules <pack>', 'add a rule pack, a file or a folder of them; may be given again').argParser(collect);

export const drawsOption = () =>
	new Option(
		'--draws <count>',
		'draws that show how sure a verdict is; more is steadier and slower (default: 400)',
	).argParser(readDraws);

export const unfittedOption = () => new Option('--unfitted', 'leave aside what logs say of this car');

/** The options that `audit` and `recheck` share. */
export function judgeOptions(command: Command): Command {
	return command
		.addOption(new Option('--out <file>', `write to a file: ${formatsInWords}`))
		.addOption(new Option('--json', 'print the audit as JSON'))
		.addOption(new Option('--whole', 'later stages line by line, and the details in the same text'))
		.addOption(unitsOption())
		.addOption(packOption())
		.addOption(
			new Option('--gate <stage>', 'end with status 1 unless this stage and all before it are ready')
				.choices(stages)
				.argParser(readStage),
		)
		.addOption(
			new Option('--date <day>', 'the day to put on it, YYYY-MM-DD (default: today)').argParser(day => readDate(day)),
		)
		.addOption(drawsOption())
		.addOption(unfittedOption())
		.addOption(new Option('--record', 'keep the audit in the sheet, for the next recheck'))
		.addOption(new Option('--no-record', 'do not keep it'));
}
