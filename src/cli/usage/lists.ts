import type { Command } from 'commander';
import type { Status } from './words.ts';

export function quantities(program: Command, status: Status): void {
	program
		.command('quantities')
		.summary('each computed quantity with formula, range and source')
		.description('Prints each quantity that is computed, with formula, inputs, range and source.')
		.argument('[quantity]', 'one of them, by id')
		.option('--json', 'print a JSON array')
		.action(async (id, flags) => status((await import('../commands/quantities.ts')).quantities(id, flags)));
}

export function questions(program: Command, status: Status): void {
	program
		.command('questions')
		.summary('every question and its id')
		.description('Prints every question and the id of its answer in the sheet.')
		.option('--json', 'print a JSON array')
		.option('--schema', 'print the JSON Schema of a sheet')
		.action(async flags => status((await import('../commands/questions.ts')).questions(flags)));
}

export function circuits(program: Command, status: Status): void {
	program
		.command('circuits')
		.summary('every circuit that a plug may carry')
		.description(
			'Prints each circuit with the names it is known by, its sort, what it is for and when the engine needs it.',
		)
		.option('--json', 'print a JSON array')
		.action(async flags => status((await import('../commands/circuits.ts')).circuits(flags)));
}

export function channels(program: Command, status: Status): void {
	program
		.command('channels')
		.summary('what a column of a log can be')
		.description('Prints each channel of a log: what it is, its units, its range and the headers it is known by.')
		.option('--json', 'print a JSON array')
		.action(async flags => status((await import('../commands/channels.ts')).channels(flags)));
}
