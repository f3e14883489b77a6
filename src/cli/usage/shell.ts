import { Argument, type Command } from 'commander';
import type { Status } from './words.ts';

export function completion(program: Command, status: Status): void {
	program
		.command('completion')
		.summary('TAB completion for your shell')
		.description('Prints the script that teaches a shell to complete swap-audit; its first lines say where it goes.')
		.addArgument(new Argument('<shell>', 'which shell').choices(['bash', 'zsh', 'fish']))
		.action(async shell => status((await import('../commands/completion.ts')).completion(shell)));
}

export function help(program: Command, status: Status): void {
	program
		.helpCommand(false)
		.command('help')
		.summary('what a command does; the words of the trade')
		.description(
			'Prints the help of the program or of a command. help words prints the words of the trade that the program speaks, with what each means and what it is said instead of; help words TERM one of them.',
		)
		.argument('[topic]', 'a command, or words')
		.argument('[term]', 'a command under it; of words, one word')
		.action(async (topic?: string, term?: string) =>
			status((await import('../commands/help.ts')).help(program, topic, term)),
		);
}

export function complete(program: Command, status: Status): void {
	program
		.command('complete', { hidden: true })
		.description('What the completion scripts ask: the words so far, the last one unfinished.')
		.argument('[word...]')
		.action(async words => status(await (await import('../commands/complete.ts')).complete(program, words)));
}
