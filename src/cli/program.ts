import { type Command, CommanderError } from 'commander';
import { version } from './assets/version.ts';
import { commandTable, everyCommand } from './command-table.ts';
import { describe, helpText } from './options/help-text.ts';
import { BadUsage, exit } from './process/exit.ts';
import { print, printMessage } from './process/output.ts';

/** The table with its help texts, and with errors in one clear line that says where to look. */
function dressed(program: Command): Command {
	const widest = Math.max(...helpText.examples.map(([line]) => line.length));
	program
		.version(version, '-V, --version', 'print the version')
		.addHelpText(
			'after',
			[
				`\n${helpText.start}`,
				`\n${helpText.sheet}`,
				'\nTo begin:',
				...helpText.examples.map(([line, words]) => `  ${line.padEnd(widest)}  ${words}`),
				`\n${helpText.advice}`,
			].join('\n'),
		);
	for (const command of everyCommand(program)) {
		const path = pathOf(command);
		command
			.exitOverride()
			.configureHelp({ optionDescription: describe, argumentDescription: describe })
			.helpOption('-h, --help', 'print this help')
			.configureOutput({
				writeOut: print,
				writeErr: text => printMessage(text.trimEnd()),
				outputError: (text, write) =>
					write(`${text.replace(/^error: (command-argument )?/, '').trimEnd()}\nSee: ${path} --help`),
			})
			.showSuggestionAfterError();
	}
	return program;
}

const pathOf = (command: Command): string =>
	command.parent ? `${pathOf(command.parent)} ${command.name()}` : command.name();

/** Runs the command line. Gives the exit status of usage errors and help; throws what the commands throw. */
export async function run(args: readonly string[]): Promise<number> {
	if (args.length === 0) return (await import('./commands/interview.ts')).interview(undefined, {});
	const [first = ''] = args;
	if (first.includes('/') || first.endsWith('.json')) {
		throw new BadUsage(`a command comes first: swap-audit interview ${first}, or swap-audit audit ${first}`);
	}
	let code: number = exit.done;
	try {
		await dressed(commandTable(status => (code = status), first)).parseAsync(args, { from: 'user' });
	} catch (error) {
		if (!(error instanceof CommanderError)) throw error;
		return error.exitCode === 0 ? exit.done : exit.badInput;
	}
	return code;
}
