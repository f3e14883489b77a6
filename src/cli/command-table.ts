import { Argument, Command, Option } from 'commander';
import { type Stage, stages } from '../rulebook/rulebook.ts';
import { accesses } from '../sheet/access.ts';
import { complete } from './commands/complete.ts';
import { collect, drawsOption, judgeOptions, packOption, unitsOption } from './options/flags.ts';
import { readDate, readMinutes, readStage, usualEvening } from './options/values.ts';
import { BadUsage } from './process/exit.ts';
import { print } from './process/output.ts';

const sheetWords = 'a path, a name, or - for standard input';

/** What help shows first, in this order; the rest is under *more*. */
const first = ['interview', 'audit', 'plan', 'recheck'];

/**
 * The table of every command; what does the work is loaded when one is called, and `status` gets its exit status. Help, the
 * completion of the shells and the manual page are made from it: a placeholder's name says what stands there.
 */
export function commandTable(status: (code: number) => void): Command {
	const program = new Command('swap-audit').description(
		'Audits a home-built V8 engine swap: asks, computes, judges, and writes a prioritized list with cautions.',
	);
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
		.action(async (sheet, flags) => status(await (await import('./commands/interview.ts')).interview(sheet, flags)));
	judgeOptions(
		program
			.command('audit')
			.summary('judge a sheet')
			.description(
				'Judges a sheet and prints the audit as Markdown. Printing changes nothing; --out keeps a record in the sheet.',
			)
			.argument('[sheet]', sheetWords),
	)
		.addOption(
			new Option(
				'--lines',
				'one sheet a line on standard input, one audit a line printed; without draws: --gate alone counts doubt',
			),
		)
		.addOption(new Option('--schema', 'print the JSON Schema of an audit; judges nothing'))
		.action(async (sheet: string | undefined, flags) => {
			if (flags.schema) {
				const { auditSchema } = await import('../report/audit-schema.ts');
				print(JSON.stringify(auditSchema, null, 2));
				return;
			}
			if (flags.lines) {
				if (sheet !== undefined) throw new BadUsage('audit --lines reads the sheets from standard input: name none');
				refuseWithLines(flags);
				status(await (await import('./commands/audit-jsonl.ts')).auditJsonl(flags));
				return;
			}
			if (sheet === undefined) throw new BadUsage('audit: name a sheet: a path, a name, or - for standard input');
			status(await (await import('./commands/audit.ts')).audit(sheet, flags));
		});
	judgeOptions(
		program
			.command('recheck')
			.summary('judge again and say what changed')
			.description('Judges a sheet again, says what changed since an earlier audit, and keeps a record in the sheet.')
			.argument('<sheet>', sheetWords),
	)
		.addOption(
			new Option(
				'--since <day or file>',
				'compare with this: a day, an audit as JSON, another sheet (default: the last audit in the sheet)',
			),
		)
		.action(async (sheet: string, flags) =>
			status(await (await import('./commands/audit.ts')).audit(sheet, { ...flags, since: flags.since ?? null })),
		);
	const parts = {
		limits: 'what gives out first as boost goes up',
		next: 'what to measure next',
		readings: 'what you should read on gauges and meters',
	} as const;
	for (const [name, words] of Object.entries(parts)) {
		program
			.command(name)
			.summary(words)
			.description(`Prints one part of the audit alone: ${words}.`)
			.argument('<sheet>', sheetWords)
			.option('--json', 'print a JSON array')
			.addOption(unitsOption())
			.addOption(packOption())
			.action(async (sheet: string, flags) =>
				status(await (await import('./commands/parts.ts')).printPart(name as keyof typeof parts, sheet, flags)),
			);
	}
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
		.action(async (sheet: string, flags) => status(await (await import('./commands/plan.ts')).plan(sheet, flags)));
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
		.action(async added => status((await import('./commands/rules.ts')).list(added)));
	rules
		.command('show')
		.summary('one rule in words')
		.description('Prints one rule in words: what it reads, thresholds, why, what to do, how to prove it, source.')
		.argument('<rule>', 'a rule id')
		.argument(packs, packWords)
		.addOption(unitsOption('units to write in, if not those of your preferences'))
		.action(async (id, added, { units }) => status(await (await import('./commands/rules.ts')).show(id, added, units)));
	rules
		.command('test')
		.summary('run the examples of the rules')
		.description('Runs every example of every rule, packs included; status 1 when one comes out wrong.')
		.argument(packs, packWords)
		.action(async added => status((await import('./commands/rules.ts')).test(added)));
	rules
		.command('schema')
		.summary('for editors: what a rule file may hold')
		.description('Prints the JSON Schema of a rule file or a pack, for completion in an editor.')
		.action(async () => status((await import('./commands/rules.ts')).schema()));
	program
		.command('quantities')
		.summary('each computed quantity with formula, range and source')
		.description('Prints each quantity that is computed, with formula, inputs, range and source.')
		.argument('[quantity]', 'one of them, by id')
		.option('--json', 'print a JSON array')
		.action(async (id, flags) => status((await import('./commands/quantities.ts')).quantities(id, flags)));
	program
		.command('questions')
		.summary('every question and its id')
		.description('Prints every question and the id of its answer in the sheet.')
		.option('--json', 'print a JSON array')
		.option('--schema', 'print the JSON Schema of a sheet')
		.action(async flags => status((await import('./commands/questions.ts')).questions(flags)));
	program
		.command('pins')
		.summary('hold the halves of plugs against each other')
		.description(
			'Prints what to do at each pin where two halves of a plug meet, what must not meet, and a meter card. With --read, reads a table of pins into the sheet.',
		)
		.argument('<sheet>', sheetWords)
		.option('--json', 'print JSON')
		.addOption(new Option('--out <file>', 'write it to a file ending in .md, .html, .json or .csv'))
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
		.action(async (sheet: string, flags) => status(await (await import('./commands/pins.ts')).pins(sheet, flags)));
	program
		.command('circuits')
		.summary('every circuit that a plug may carry')
		.description(
			'Prints each circuit with the names it is known by, its sort, what it is for and when the engine needs it.',
		)
		.option('--json', 'print a JSON array')
		.action(async flags => status((await import('./commands/circuits.ts')).circuits(flags)));
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
			status(await (await import('./commands/log.ts')).log(sheet, path, flags)),
		);
	program
		.command('channels')
		.summary('what a column of a log can be')
		.description('Prints each channel of a log: what it is, its units, its range and the headers it is known by.')
		.option('--json', 'print a JSON array')
		.action(async flags => status((await import('./commands/channels.ts')).channels(flags)));
	program
		.command('completion')
		.summary('TAB completion for your shell')
		.description('Prints the script that teaches a shell to complete swap-audit; its first lines say where it goes.')
		.addArgument(new Argument('<shell>', 'which shell').choices(['bash', 'zsh', 'fish']))
		.action(async shell => status((await import('./commands/completion.ts')).completion(shell)));
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
			status((await import('./commands/help.ts')).help(program, topic, term)),
		);
	program
		.command('complete', { hidden: true })
		.description('What the completion scripts ask: the words so far, the last one unfinished.')
		.argument('[word...]')
		.action(async words => status(await complete(program, words)));
	const inFront = (command: Command) => (first.indexOf(command.name()) + first.length + 1) % (first.length + 1);
	(program.commands as Command[]).sort((a, b) => inFront(a) - inFront(b));
	for (const command of program.commands) command.helpGroup(first.includes(command.name()) ? 'Commands:' : 'More:');
	return program;
}

/** What `--lines` cannot do: it prints every audit whole, without draws, and leaves every sheet alone. */
function refuseWithLines(flags: Readonly<Record<string, unknown>>): void {
	for (const name of ['gate', 'out', 'draws'])
		if (flags[name] !== undefined) throw new BadUsage(`audit --lines takes no --${name}: leave it out`);
	if (flags.record === true) throw new BadUsage('audit --lines takes no --record: leave it out');
}

/** A command and all below it. */
export function* everyCommand(command: Command): Generator<Command> {
	yield command;
	for (const below of command.commands) yield* everyCommand(below);
}
