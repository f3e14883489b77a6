import type { Command } from 'commander';
import { unitsOption } from '../options/flags.ts';
import type { Status } from './words.ts';

export function rules(program: Command, status: Status): void {
	const rules = program
		.command('rules')
		.summary('list the rules, show one, run their examples')
		.description('The rules that judge a sheet: lists them, shows one in words, runs their examples.');
	const packs = '[pack...]';
	const packWords = 'rule packs to add: files or folders';
	rules
		.command('list')
		.description('Prints a line a rule: id, before which stage to settle it, what is at stake, title.')
		.summary('a line a rule')
		.argument(packs, packWords)
		.action(async added => status((await import('../commands/rules.ts')).list(added)));
	rules
		.command('show')
		.summary('one rule in words')
		.description('Prints one rule in words: what it reads, thresholds, why, what to do, how to prove it, source.')
		.argument('<rule>', 'a rule id')
		.argument(packs, packWords)
		.addOption(unitsOption('units to write in, if not those of your preferences'))
		.action(async (id, added, { units }) =>
			status(await (await import('../commands/rules.ts')).show(id, added, units)),
		);
	rules
		.command('test')
		.summary('run the examples of the rules')
		.description('Runs every example of every rule, packs included; status 1 when one comes out wrong.')
		.argument(packs, packWords)
		.action(async added => status((await import('../commands/rules.ts')).test(added)));
	rules
		.command('schema')
		.summary('for editors: what a rule file may hold')
		.description('Prints the JSON Schema of a rule file or a pack, for completion in an editor.')
		.action(async () => status((await import('../commands/rules.ts')).schema()));
}
