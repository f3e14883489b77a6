import { type Command, CommanderError } from 'commander';
import { commands, everyCommand } from './commands.ts';
import { BadUsage, exit } from './exit.ts';
import { described, notes } from './notes.ts';
import { print, say } from './say.ts';
import { version } from './version.ts';

/** The table with its help texts, and with errors in one clear line that says where to look. */
function dressed(program: Command): Command {
	const widest = Math.max(...notes.examples.map(([line]) => line.length));
	program
		.version(version, '-V, --version', 'print the version')
		.addHelpText(
			'after',
			[
				`\n${notes.start}`,
				`\n${notes.sheet}`,
				'\nTo begin:',
				...notes.examples.map(([line, words]) => `  ${line.padEnd(widest)}  ${words}`),
				`\n${notes.advice}`,
			].join('\n'),
		);
	for (const command of everyCommand(program)) {
		const path = pathOf(command);
		command
			.exitOverride()
			.configureHelp({ optionDescription: described, argumentDescription: described })
			.helpOption('-h, --help', 'print this help')
			.configureOutput({
				writeOut: print,
				writeErr: text => say(text.trimEnd()),
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
	if (args.length === 0) return (await import('./interview.ts')).interview(undefined, {});
	const [first = ''] = args;
	if (first.includes('/') || first.endsWith('.json')) {
		throw new BadUsage(`a command comes first: swap-audit interview ${first}, or swap-audit audit ${first}`);
	}
	let code: number = exit.done;
	try {
		await dressed(commands(status => (code = status))).parseAsync(args, { from: 'user' });
	} catch (error) {
		if (!(error instanceof CommanderError)) throw error;
		return error.exitCode === 0 ? exit.done : exit.badInput;
	}
	return code;
}
